package theme

import (
	"html/template"
	"reflect"
	"strings"
	"text/template/parse"
)

// compiler compiles templates that html/template has made safe.
type compiler struct {
	set       *template.Template
	functions template.FuncMap
	made      map[string]*printing // also those being made, which may call themselves
	scope     []string             // the variables where the compiler is; the first is $
}

// declare makes a variable known until the list at hand ends, and returns its place.
func (c *compiler) declare(n *parse.VariableNode) int {
	c.scope = append(c.scope, n.Ident[0])
	return len(c.scope) - 1
}

// pipe compiles what a branch or a call is about.
func (c *compiler) pipe(n *parse.PipeNode) (getter, error) {
	if len(n.Decl) > 0 || len(n.Cmds) != 1 {
		return nil, errUnknown
	}
	return c.command(n.Cmds[0])
}

// printed compiles what is printed: the value, and at the end of the commands how it is
// escaped. A function between them takes what came before it.
func (c *compiler) printed(commands []*parse.CommandNode) (getter, *escaping, error) {
	var escapers []string
	for n := len(commands); n > 0 && strings.HasPrefix(commands[n-1].String(), escaperPrefix); n-- {
		escapers = append([]string{commands[n-1].String()}, escapers...)
		commands = commands[:n-1]
	}
	escape := escapings[strings.Join(escapers, " ")]
	if escape == nil || len(commands) == 0 {
		return nil, nil, errUnknown
	}
	value, err := c.command(commands[0])
	for _, command := range commands[1:] {
		if err != nil {
			return nil, nil, err
		}
		value, err = c.function(command, value)
	}
	return value, escape, err
}

func (c *compiler) command(n *parse.CommandNode) (getter, error) {
	if _, ok := n.Args[0].(*parse.IdentifierNode); ok {
		return c.function(n, nil)
	}
	if len(n.Args) > 1 {
		return nil, errUnknown
	}
	return c.argument(n.Args[0])
}

// argument compiles a value by itself.
func (c *compiler) argument(n parse.Node) (getter, error) {
	switch n := n.(type) {
	case *parse.DotNode:
		return func(_ *place, dot reflect.Value) (reflect.Value, error) { return dot, nil }, nil
	case *parse.FieldNode:
		return fields(n.Ident, func(_ *place, dot reflect.Value) (reflect.Value, error) { return dot, nil }), nil
	case *parse.VariableNode:
		variable := len(c.scope) - 1
		for c.scope[variable] != n.Ident[0] { // the parser has seen that it is declared
			variable--
		}
		return fields(n.Ident[1:], func(p *place, _ reflect.Value) (reflect.Value, error) { return p.vars[variable], nil }), nil
	case *parse.StringNode:
		return constant(n.Text), nil
	case *parse.NumberNode:
		if !n.IsInt {
			return nil, errUnknown
		}
		return constant(int(n.Int64)), nil
	case *parse.PipeNode:
		return c.pipe(n)
	}
	return nil, errUnknown
}

func constant(value any) getter {
	v := reflect.ValueOf(value)
	return func(*place, reflect.Value) (reflect.Value, error) { return v, nil }
}

// function compiles the call of a function, with what came before it in a pipe as its
// last argument.
func (c *compiler) function(n *parse.CommandNode, before getter) (getter, error) {
	name, ok := n.Args[0].(*parse.IdentifierNode)
	if !ok {
		return nil, errUnknown
	}
	var arguments []getter
	for _, a := range n.Args[1:] {
		argument, err := c.argument(a)
		if err != nil {
			return nil, err
		}
		arguments = append(arguments, argument)
	}
	if before != nil {
		arguments = append(arguments, before)
	}
	called := reflect.ValueOf(c.functions[name.Ident])
	switch {
	case len(arguments) > 0 && (name.Ident == "and" || name.Ident == "or"):
		return firstThat(name.Ident == "or", arguments), nil
	case len(arguments) == 1 && name.Ident == "not":
		return negation(arguments[0]), nil
	case len(arguments) == 2 && comparisons[name.Ident] != nil:
		return comparison(name.Ident, arguments[0], arguments[1]), nil
	case len(arguments) == 1 && name.Ident == "len":
		return length(arguments[0]), nil
	case called.IsValid() && takes(called.Type(), len(arguments)):
		return calling(name.Ident, called, arguments), nil
	}
	return nil, errUnknown
}
