package theme

import (
	"fmt"
	"reflect"
	"text/template/parse"
)

// template compiles a template; nil if it holds something unknown.
func (c *compiler) template(name string) *printing {
	if made, ok := c.made[name]; ok {
		return made
	}
	found := c.set.Lookup(name)
	if found == nil || found.Tree == nil {
		return nil
	}
	made := &printing{name: name}
	c.made[name] = made
	outside := c.scope
	c.scope = []string{"$"}
	defer func() { c.scope = outside }()
	var err error
	if made.print, err = c.list(found.Tree.Root); err != nil {
		c.made[name] = nil
	}
	return c.made[name]
}

// list compiles nodes that are printed one after the other.
func (c *compiler) list(l *parse.ListNode) (step, error) {
	if l == nil {
		return func(*place, reflect.Value) error { return nil }, nil
	}
	outside := len(c.scope)
	defer func() { c.scope = c.scope[:outside] }()
	var steps []step
	for _, n := range l.Nodes {
		s, err := c.node(n)
		if err != nil {
			return nil, err
		}
		steps = append(steps, s)
	}
	return func(p *place, dot reflect.Value) error {
		for _, s := range steps {
			if err := s(p, dot); err != nil {
				return err
			}
		}
		return nil
	}, nil
}

func (c *compiler) node(n parse.Node) (step, error) {
	switch n := n.(type) {
	case *parse.TextNode:
		return func(p *place, _ reflect.Value) error {
			_, err := p.out.Write(n.Text)
			return err
		}, nil
	case *parse.ActionNode:
		return c.action(n)
	case *parse.IfNode:
		return c.branch(&n.BranchNode, func(dot, _ reflect.Value) reflect.Value { return dot })
	case *parse.WithNode:
		return c.branch(&n.BranchNode, func(_, value reflect.Value) reflect.Value { return value })
	case *parse.RangeNode:
		return c.each(n)
	case *parse.TemplateNode:
		return c.call(n)
	}
	return nil, errUnknown
}

// action compiles a value that is printed.
func (c *compiler) action(n *parse.ActionNode) (step, error) {
	if len(n.Pipe.Decl) > 0 {
		return c.declaration(n.Pipe)
	}
	value, escape, err := c.printed(n.Pipe.Cmds)
	if err != nil {
		return nil, err
	}
	return func(p *place, dot reflect.Value) error {
		v, err := value(p, dot)
		if err != nil {
			return err
		}
		return escape.write(p, v)
	}, nil
}

// declaration compiles {{$name := value}}.
func (c *compiler) declaration(n *parse.PipeNode) (step, error) {
	if n.IsAssign || len(n.Cmds) != 1 {
		return nil, errUnknown
	}
	value, err := c.command(n.Cmds[0])
	variable := c.declare(n.Decl[0])
	return func(p *place, dot reflect.Value) error {
		v, err := value(p, dot)
		p.set(variable, v)
		return err
	}, err
}

// branch compiles an if or a with; inside says of what value its list is printed.
func (c *compiler) branch(n *parse.BranchNode, inside func(dot, value reflect.Value) reflect.Value) (step, error) {
	if len(n.Pipe.Decl) > 0 {
		return nil, errUnknown
	}
	condition, then, otherwise, err := c.parts(n)
	if err != nil {
		return nil, err
	}
	return func(p *place, dot reflect.Value) error {
		v, err := condition(p, dot)
		switch {
		case err != nil:
			return err
		case isTrue(v):
			return then(p, inside(dot, v))
		}
		return otherwise(p, dot)
	}, nil
}

// each compiles a range over a list. With {{range $n, $one := .List}} two variables
// stand for the number of an item and for the item, with {{range $one := .List}} one.
func (c *compiler) each(n *parse.RangeNode) (step, error) {
	outside := len(c.scope)
	defer func() { c.scope = c.scope[:outside] }()
	var variables []int
	for _, d := range n.Pipe.Decl {
		variables = append(variables, c.declare(d))
	}
	list, body, otherwise, err := c.parts(&n.BranchNode)
	if err != nil {
		return nil, err
	}
	return func(p *place, dot reflect.Value) error {
		all, err := list(p, dot)
		if err != nil {
			return err
		}
		if all = behind(all); all.IsValid() && all.Kind() != reflect.Slice && all.Kind() != reflect.Array {
			return fmt.Errorf("%s: range over %s, which is no list", n.Pipe, all.Type())
		}
		if !all.IsValid() || all.Len() == 0 {
			return otherwise(p, dot)
		}
		for i := range all.Len() {
			for n, v := range []reflect.Value{reflect.ValueOf(i), all.Index(i)}[2-len(variables):] {
				p.set(variables[n], v)
			}
			if err := body(p, all.Index(i)); err != nil {
				return err
			}
		}
		return nil
	}, nil
}

// parts compiles what branches have: a value, a list of nodes and another.
func (c *compiler) parts(n *parse.BranchNode) (value getter, then, otherwise step, err error) {
	if len(n.Pipe.Cmds) != 1 {
		return nil, nil, nil, errUnknown
	}
	if value, err = c.command(n.Pipe.Cmds[0]); err != nil {
		return nil, nil, nil, err
	}
	if then, err = c.list(n.List); err != nil {
		return nil, nil, nil, err
	}
	otherwise, err = c.list(n.ElseList)
	return value, then, otherwise, err
}

// call compiles the printing of another template.
func (c *compiler) call(n *parse.TemplateNode) (step, error) {
	value := func(*place, reflect.Value) (reflect.Value, error) { return reflect.Value{}, nil }
	if n.Pipe != nil {
		var err error
		if value, err = c.pipe(n.Pipe); err != nil {
			return nil, err
		}
	}
	if c.set.Lookup(n.Name) == nil { // html/template made it anew, for where it stands
		return nil, errUnknown
	}
	called := c.template(n.Name)
	return func(p *place, dot reflect.Value) error {
		v, err := value(p, dot)
		switch {
		case err != nil:
			return err
		case called == nil || called.print == nil: // it, or what calls itself through it, holds something unknown
			return c.set.ExecuteTemplate(p.out, n.Name, held(v))
		}
		return called.print(&place{out: p.out, vars: []reflect.Value{v}, room: p.room}, v)
	}, nil
}
