package setting

import (
	"fmt"
	"html/template"
	"slices"
	"strconv"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/press/desk"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/register"
	"slipbook/generator/press/table"
	"slipbook/generator/press/theme"
)

// blockViews lists them, by the name of the block.
func blockViews() map[string]View {
	return map[string]View{
		markup.CautionBlock:    (*setting).caution,
		markup.AskedBlock:      (*setting).asked,
		markup.TeachingBlock:   (*setting).teaching,
		markup.CalculatorBlock: (*setting).calculator,
		markup.QuestionBlock:   (*setting).question,
		markup.StagesBlock:     (*setting).stagesBlock,
		markup.RecipeBlock:     (*setting).recipe,
		markup.LimitsBlock:     (*setting).limits,
	}
}

// Check finds the first block that is read and that no view shows, or the other way
// round.
func Check() error { return checkViews(markup.Kinds(), blockViews()) }

// New makes a Setter in a theme, of a copy for the instructor or not.
func New(t *theme.Theme, calculators *desk.Calculators, decoration *table.Table, kept *register.Register, units []*course.Unit, forTeaching bool) *Setter {
	numbers := map[string]string{}
	for n, u := range units {
		for of, lesson := range u.Lessons {
			numbers[lesson.Address] = imprint.LessonNumber(strconv.Itoa(n+1), of)
		}
	}
	return &Setter{t, calculators, decoration, kept, forTeaching, blockViews(), numbers}
}

// checkViews finds the first block that is read and that no view shows, or the other
// way round: the two lists stand in two packages.
func checkViews(kinds []string, views map[string]View) error {
	for _, kind := range kinds {
		if views[kind] == nil {
			return fmt.Errorf("block %q has no view: add it to blockViews in press/setting/blocks.go", kind)
		}
	}
	for kind := range views {
		if !slices.Contains(kinds, kind) {
			return fmt.Errorf("blockViews in press/setting/blocks.go has a view of %q, which is no block: add it to blockKinds in markup/block.go", kind)
		}
	}
	return nil
}

// cautionView is a caution as its piece prints it.
type cautionView struct {
	ID      string // of its words; empty where it has none
	Heading string
	Body    template.HTML
}

// askedView is what students ask, as its piece prints it.
type askedView struct {
	ID   string // empty where it has none
	Ask  string
	Body template.HTML
}

// questionView is a self-check question as its piece prints it.
type questionView struct {
	ID      string // of its words; empty where it has none
	Number  int    // on the page, from 1
	Ask     string
	Answers []markup.Choice
	Told    string // of the e-book: where the right answer stands; empty elsewhere
}

// blockID returns the id of a block; empty among words of other pages.
func (s *setting) blockID(id string) string {
	if s.apart {
		return ""
	}
	return s.at.ID(id)
}

// inner sets the body of a block.
func (s *setting) inner(b *markup.Block) (template.HTML, error) {
	return set(setting{Setter: s.Setter, of: s.of, at: s.at, apart: s.apart}, b.Pieces)
}

func (s *setting) caution(b *markup.Block) (any, error) {
	body, err := s.inner(b)
	return cautionView{s.blockID("caution." + strconv.Itoa(b.Number)), markup.Bind(b.Words), body}, err
}

func (s *setting) asked(b *markup.Block) (any, error) {
	body, err := s.inner(b)
	return askedView{s.blockID(address.Asked(b.Number)), markup.Bind(b.Words), body}, err
}

// teaching is nothing in a students' copy.
func (s *setting) teaching(b *markup.Block) (any, error) {
	if !s.forTeaching {
		return nil, nil
	}
	return s.inner(b)
}

func (s *setting) question(b *markup.Block) (any, error) {
	v := questionView{ID: s.blockID("question." + strconv.Itoa(b.Number)), Number: b.Number, Ask: markup.Bind(b.Ask.Ask)}
	for _, a := range b.Ask.Answers {
		v.Answers = append(v.Answers, markup.Choice{Text: markup.Bind(a.Text), Right: a.Right, Because: markup.Bind(a.Because)})
	}
	if s.at.Ebook != nil && !s.apart {
		v.Told = s.at.Ebook.ToAnswer(s.at.Page, v.Number)
	}
	return v, nil
}

func (s *setting) stagesBlock(b *markup.Block) (any, error) {
	return s.table.Stages(b, s.blockID("stages."+strconv.Itoa(b.Number)), s.at), nil
}

// calculator is nothing among words of other pages, where no script would drive
// it. In a lesson it is folded: it is wanted at one step and else in the way.
func (s *setting) calculator(b *markup.Block) (any, error) {
	if s.apart {
		return nil, nil
	}
	return s.calculators.HTML(b, s.at, s.of.Kind == course.LessonPage)
}

// recipe is a weighing order.
func (s *setting) recipe(b *markup.Block) (any, error) {
	return s.register.Block(b, s.blockID("recipe."+strconv.Itoa(b.Number)), s.at), nil
}

// limits is what the law asks about something.
func (s *setting) limits(b *markup.Block) (any, error) {
	return s.register.Limits(b, s.blockID("limits."+strconv.Itoa(b.Number))), nil
}
