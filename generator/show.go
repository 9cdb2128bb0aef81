package main

import (
	"context"

	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/preview"
)

// showCommand shows the handbook while it is being written.
type showCommand struct {
	Content  string `placeholder:"DIR" default:"content" help:"The folder with the lessons (${default})."`
	Teaching bool   `help:"Show the instructor's copy, with the notes for teaching."`
	Address  string `placeholder:"ADDRESS" default:"127.0.0.1:8300" help:"Where to show it (${default}). Only this machine can be chosen, and any port of it."`
}

// Run serves until Ctrl-C. A second Ctrl-C ends it at once.
func (c *showCommand) Run(s *streams) error {
	h, err := open(c.Content, houseTheme)
	if err != nil {
		return err
	}
	h.copy.Teaching = c.Teaching
	lessons := h.lessons
	h.lessons = func() (*course.Course, finding.List) {
		shown, findings := lessons()
		shown.PublishedAt = "/" // it is published nowhere yet: what starts from there starts here
		return shown, findings
	}
	ctx, caught := catchSignals()
	defer caught.release()
	context.AfterFunc(ctx, caught.release)
	return preview.Serve(ctx, preview.Options{
		Address: c.Address,
		Folder:  c.Content,
		Build: func(ctx context.Context) (preview.Handbook, finding.List, error) {
			edition, findings, err := h.print(ctx)
			if edition == nil { // not a nil edition that looks like one
				return nil, findings, err
			}
			return edition, findings, err
		},
		Say:      s.say,
		Progress: s.watched(),
	})
}
