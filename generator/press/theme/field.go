package theme

import (
	"fmt"
	"reflect"
	"sync/atomic"
)

// fields compiles the fields of fields of a value.
func fields(names []string, of getter) getter {
	for _, name := range names {
		inner, f := of, &field{name: name}
		of = func(p *place, dot reflect.Value) (reflect.Value, error) {
			v, err := inner(p, dot)
			if err != nil {
				return v, err
			}
			return f.of(v)
		}
	}
	return of
}

// field is a field or a method by its name. Nearly always it is asked of one type, of
// which it keeps the place.
type field struct {
	name string
	last atomic.Pointer[fieldPlace]
}

// fieldPlace is where a type has a field.
type fieldPlace struct {
	of    reflect.Type
	index []int // nil of a method
}

// of returns the field of a value, or what its method of that name returns.
func (f *field) of(v reflect.Value) (reflect.Value, error) {
	if v = behind(v); !v.IsValid() {
		return v, fmt.Errorf("no %s of nothing", f.name)
	}
	if v.Kind() == reflect.Map {
		return f.key(v)
	}
	at := f.last.Load()
	if at == nil || at.of != v.Type() {
		var err error
		if at, err = f.find(v.Type()); err != nil {
			return reflect.Value{}, err
		}
		f.last.Store(at)
	}
	if at.index != nil {
		return v.FieldByIndexErr(at.index)
	}
	if v.CanAddr() {
		v = v.Addr()
	}
	method := v.MethodByName(f.name)
	if !method.IsValid() {
		return v, fmt.Errorf("%s has no method %s without its address", v.Type(), f.name)
	}
	return result(method.Call(nil))
}

// key returns what a map holds under the name.
func (f *field) key(of reflect.Value) (reflect.Value, error) {
	v := of.MapIndex(reflect.ValueOf(f.name))
	if !v.IsValid() {
		return v, fmt.Errorf("there is no key %q", f.name)
	}
	return v, nil
}

// find looks the name up in a type.
func (f *field) find(of reflect.Type) (*fieldPlace, error) {
	if _, ok := reflect.PointerTo(of).MethodByName(f.name); ok {
		return &fieldPlace{of: of}, nil
	}
	if of.Kind() == reflect.Struct {
		if found, ok := of.FieldByName(f.name); ok && found.IsExported() {
			return &fieldPlace{of, found.Index}, nil
		}
	}
	return nil, fmt.Errorf("%s has no field %s", of, f.name)
}
