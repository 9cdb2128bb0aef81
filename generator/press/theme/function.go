package theme

import (
	"cmp"
	"fmt"
	"reflect"
	"strings"
)

// takes reports whether a function takes a number of arguments.
func takes(function reflect.Type, n int) bool {
	if function.IsVariadic() {
		return n >= function.NumIn()-1
	}
	return n == function.NumIn()
}

// firstThat returns the first of some values that is true, or that is not; else the last.
func firstThat(is bool, all []getter) getter {
	return func(p *place, dot reflect.Value) (v reflect.Value, err error) {
		for _, get := range all {
			if v, err = get(p, dot); err != nil || isTrue(v) == is {
				break
			}
		}
		return v, err
	}
}

// negation returns whether a value is not true.
func negation(of getter) getter {
	return func(p *place, dot reflect.Value) (reflect.Value, error) {
		v, err := of(p, dot)
		return reflect.ValueOf(!isTrue(v)), err
	}
}

// comparisons say of what is compared, as a number below, at or above zero, whether
// the function of a name is true.
var comparisons = map[string]func(order int) bool{
	"eq": func(order int) bool { return order == 0 },
	"ne": func(order int) bool { return order != 0 },
	"gt": func(order int) bool { return order > 0 },
}

// comparison returns what a function of these says of two texts or two whole numbers.
func comparison(name string, one, other getter) getter {
	return func(p *place, dot reflect.Value) (reflect.Value, error) {
		a, err := one(p, dot)
		if err != nil {
			return a, err
		}
		b, err := other(p, dot)
		if err != nil {
			return b, err
		}
		order, err := compared(behind(a), behind(b))
		return reflect.ValueOf(comparisons[name](order)), err
	}
}

func compared(a, b reflect.Value) (int, error) {
	switch {
	case a.Kind() == reflect.String && b.Kind() == reflect.String:
		return strings.Compare(a.String(), b.String()), nil
	case a.CanInt() && b.CanInt():
		return cmp.Compare(a.Int(), b.Int()), nil
	}
	return 0, fmt.Errorf("%s and %s are compared, which are not both text or both whole numbers", a.Kind(), b.Kind())
}

// length returns how long a list or a text is.
func length(of getter) getter {
	return func(p *place, dot reflect.Value) (reflect.Value, error) {
		v, err := of(p, dot)
		if err != nil {
			return v, err
		}
		switch v = behind(v); v.Kind() {
		case reflect.Slice, reflect.Array, reflect.Map, reflect.String:
			return reflect.ValueOf(v.Len()), nil
		}
		return v, fmt.Errorf("len of %s", v.Kind())
	}
}

// calling returns what a function returns of some values.
func calling(name string, function reflect.Value, arguments []getter) getter {
	if say, ok := function.Interface().(func(string, ...any) (string, error)); ok {
		return saying(say, arguments)
	}
	return func(p *place, dot reflect.Value) (reflect.Value, error) {
		values := make([]reflect.Value, len(arguments))
		for i, get := range arguments {
			v, err := get(p, dot)
			if err != nil {
				return v, err
			}
			if values[i], err = fitting(v, parameter(function.Type(), i)); err != nil {
				return v, fmt.Errorf("%s: %w", name, err)
			}
		}
		return result(function.Call(values))
	}
}

// saying is calling for what nearly all calls are: words with values in them.
func saying(say func(key string, values ...any) (string, error), arguments []getter) getter {
	return func(p *place, dot reflect.Value) (reflect.Value, error) {
		key, err := arguments[0](p, dot)
		if err != nil {
			return key, err
		}
		if key = behind(key); key.Kind() != reflect.String {
			return key, fmt.Errorf("%s where words are wanted", key.Kind())
		}
		values := make([]any, len(arguments)-1)
		for i, get := range arguments[1:] {
			v, err := get(p, dot)
			if err != nil {
				return v, err
			}
			values[i] = held(v)
		}
		text, err := say(key.String(), values...)
		return reflect.ValueOf(text), err
	}
}

// parameter is the type of the n-th argument of a function, from 0.
func parameter(function reflect.Type, n int) reflect.Type {
	if last := function.NumIn() - 1; function.IsVariadic() && n >= last {
		return function.In(last).Elem()
	}
	return function.In(n)
}

// fitting returns a value as an argument of a type.
func fitting(v reflect.Value, as reflect.Type) (reflect.Value, error) {
	if v.Kind() == reflect.Interface && !v.IsNil() {
		v = v.Elem()
	}
	switch {
	case !v.IsValid():
		return v, fmt.Errorf("nothing where %s is wanted", as)
	case v.Type().AssignableTo(as):
		return v, nil
	case v.Kind() == reflect.Pointer && v.Type().Elem().AssignableTo(as) && !v.IsNil():
		return v.Elem(), nil
	}
	return v, fmt.Errorf("%s where %s is wanted", v.Type(), as)
}

// result is what a function returned: a value, and perhaps an error.
func result(returned []reflect.Value) (reflect.Value, error) {
	if len(returned) == 2 && !returned[1].IsNil() {
		return returned[0], returned[1].Interface().(error)
	}
	return returned[0], nil
}
