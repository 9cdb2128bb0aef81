package main

// proofCommand says what is wrong with the lessons.
type proofCommand struct {
	Content string `placeholder:"DIR" default:"content" help:"The folder with the lessons (${default})."`
	Format  string `placeholder:"FORMAT" default:"text" enum:"text,json,sarif" help:"How to say it: text for people, json or sarif (SARIF 2.1.0) for other programs."`
}

// Run prints the findings, and fails when one of them would stop publish.
func (c *proofCommand) Run(s *streams) error {
	h, err := open(c.Content, houseTheme)
	if err != nil {
		return err
	}
	_, _, findings, err := h.read()
	if err := findings.Write(s.out, c.Format); err != nil {
		return err
	}
	if err != nil {
		return err
	}
	if findings.Stop() {
		return errSaid
	}
	return nil
}
