package theme

import (
	"errors"
	"fmt"
	"io"
	"reflect"
)

// printing is a compiled template.
type printing struct {
	name  string
	print step
}

// step prints a part of a template.
type step func(p *place, dot reflect.Value) error

// getter returns a value that a template names.
type getter func(p *place, dot reflect.Value) (reflect.Value, error)

// errUnknown ends the compiling of a template with something that is not known here.
var errUnknown = errors.New("not known to the compiler")

// place is where a template prints, and what its variables stand for there.
type place struct {
	out  io.Writer
	vars []reflect.Value // what variables stand for, by their place in compiler.scope
	room []byte          // to escape in
}

// set says what a variable stands for.
func (p *place) set(variable int, v reflect.Value) {
	for len(p.vars) <= variable {
		p.vars = append(p.vars, reflect.Value{})
	}
	p.vars[variable] = v
}

func (p *printing) execute(out io.Writer, view any) error {
	root := reflect.ValueOf(view)
	if err := p.print(&place{out: out, vars: []reflect.Value{root}}, root); err != nil {
		return fmt.Errorf("template %q: %w", p.name, err)
	}
	return nil
}

// behind returns what pointers and interfaces lead to; nothing if one leads nowhere.
func behind(v reflect.Value) reflect.Value {
	for v.Kind() == reflect.Pointer || v.Kind() == reflect.Interface {
		v = v.Elem()
	}
	return v
}

// isTrue reports whether a value is not the empty one of its type, as templates mean it.
func isTrue(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Invalid:
		return false
	case reflect.Slice, reflect.Map, reflect.Array, reflect.String:
		return v.Len() > 0
	case reflect.Struct:
		return true
	case reflect.Interface:
		return isTrue(v.Elem())
	}
	return !v.IsZero()
}

// held returns what a value holds.
func held(v reflect.Value) any {
	if !v.IsValid() {
		return nil
	}
	return v.Interface()
}
