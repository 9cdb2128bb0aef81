// Package press lays out pages: a course that was read, a theme and the shared
// files go in, named pages come out, in memory. It exists so that publish and
// preview print the same bytes.
package press

// Edition is a finished handbook: bytes by address from its root, pages and
// shared files alike.
type Edition map[string][]byte

// New makes a press for a course from a theme's folder. It implements
// markup.Surroundings, so that lessons can be read before anything is printed.
//
//	func New(c *course.Course, theme fs.FS) (*Press, error)
//
// Print lays out every page.
//
//	func (p *Press) Print(r *proof.Reading, b *assets.Bundle) (Edition, error)
