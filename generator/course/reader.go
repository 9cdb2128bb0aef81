package course

import (
	"crypto/sha256"
	"io/fs"
	"path"
	"time"

	"slipbook/generator/photo"
	"slipbook/generator/pool"
	"slipbook/generator/source"
)

// Reader reads a course again and again while it is being written, and keeps the
// pages of units and the photos that did not change on the disk: a save changes one
// of them, and reading two thousand takes longer than all the rest. It answers as a
// fresh one would. The zero Reader is ready; it reads one course at a time.
type Reader struct {
	// Lab makes the files of photos, and keeps them where it has a folder.
	Lab photo.Lab
	// Again reads a file of the content folder at any time after Load, for a photo
	// whose files have to be made once more. Without it the file system that Load
	// read is asked.
	Again func(file string) ([]byte, error)

	pages  pool.Kept[pageKey, *keptPage]
	photos pool.Kept[fileKey, *Picture] // sound ones
	stock  pool.Kept[pageKey, any]      // sound files of the register: *Material or *Recipe
}

// fileKey tells files apart by the disk's own word: the size, and when it was
// changed.
type fileKey struct {
	file          string
	size, changed int64
}

// keyOf returns the key of a file; not ok where what is read of it cannot be kept.
func keyOf(file string, info fs.FileInfo) (key fileKey, ok bool) {
	if info == nil || !info.Mode().IsRegular() || info.ModTime().IsZero() || time.Since(info.ModTime()) < settled {
		return key, false
	}
	return fileKey{file, info.Size(), info.ModTime().UnixNano()}, true
}

// pageKey tells apart what a page of a unit was read from.
type pageKey struct {
	fileKey
	tables [sha256.Size]byte // the files that say the language, and which media an opening block may name
}

// keptPage is a page of a unit with which nothing is wrong by itself.
type keptPage struct {
	page          Page
	lessons       []named  // of an opening page, without their places
	before, after []string // content paths
}

// settled is how long a file must have been left alone to be kept: some disks tell
// times to two seconds, and a second change within them would not show.
const settled = 3 * time.Second

// pageKey returns the key of a page; not ok where it cannot be kept.
func (l *loader) pageKey(job loadJob) (key pageKey, ok bool) {
	file, ok := keyOf(job.file, job.info)
	return pageKey{file, l.tables}, ok && job.unit != nil
}

// recall returns a page that was kept as it was parsed; nil where it was not, or
// lists a lesson that is gone, which is said at its place.
func (l *loader) recall(job loadJob, key pageKey) *parsedPage {
	kept, ok := l.reader.pages.Get(key)
	if !ok {
		return nil
	}
	for _, lesson := range kept.lessons {
		if !l.listing(path.Dir(job.file)).has(lesson.id + ".md") {
			return nil
		}
	}
	page := kept.page
	page.Address, page.Unit = job.address, job.unit
	return &parsedPage{page: &page, source: source.New(job.file, page.Source), lessons: kept.lessons, listed: true, job: job, kept: kept}
}

// keep keeps the pages that may be kept, once their opening blocks are blank.
func (l *loader) keep(parsed []*parsedPage) {
	for _, p := range parsed {
		if p.kept != nil || !p.mayKeep || p.source.Found != nil {
			continue
		}
		kept := &keptPage{page: *p.page, lessons: idsAlone(p.lessons), before: filesOf(p.page.Head.Before), after: filesOf(p.page.Head.After)}
		kept.page.Unit, kept.page.Head.Before, kept.page.Head.After = nil, nil, nil
		l.reader.pages.Put(p.key, kept)
	}
}

// idsAlone returns ids without their places, which hold the whole file.
func idsAlone(names []named) []named {
	var ids []named
	for _, n := range names {
		ids = append(ids, named{id: n.id})
	}
	return ids
}

func filesOf(links []Link) []string {
	var files []string
	for _, link := range links {
		files = append(files, link.File)
	}
	return files
}

// follow links a page to those that its opening block names. A kept one that names
// a page which is gone is read again, so that this is said at its place.
func (l *loader) follow(p *parsedPage) {
	if p.kept != nil {
		before, there := l.known(p.kept.before)
		after, too := l.known(p.kept.after)
		if there && too {
			p.page.Head.Before, p.page.Head.After = before, after
			return
		}
		fresh := l.parseAnew(p.job)
		l.open = append(l.open, fresh.source)
		p.source, p.end, p.before, p.after, p.kept = fresh.source, fresh.end, fresh.before, fresh.after, nil
		p.page.Source, p.page.Head = fresh.page.Source, fresh.page.Head
		p.page.NoHead, p.page.NoText = fresh.page.NoHead, fresh.page.NoText
	}
	p.page.Head.Before, p.page.Head.After = l.links(p, p.before), l.links(p, p.after)
}

// known links the pages with some content paths, if all are there.
func (l *loader) known(files []string) (links []Link, ok bool) {
	for _, file := range files {
		if _, there := l.course.FindPage(file); !there {
			return nil, false
		}
		links = append(links, Link{file})
	}
	return links, true
}
