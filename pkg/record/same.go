package record

import (
	"fmt"
	"reflect"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// same compares what was read with what was meant: old with e and what follows
// from it at once. It gives the first difference in words, and nothing when
// there is none. Positions are not compared.
func same(old, new *collection.Collection, e Edit) string {
	clutches := 0
	if e.Clutch != nil {
		clutches = 1
	}
	switch {
	case len(new.Animals) != len(old.Animals)+len(e.Animals):
		return fmt.Sprintf("it has %d animals instead of %d", len(new.Animals), len(old.Animals)+len(e.Animals))
	case len(new.Clutches) != len(old.Clutches)+clutches:
		return fmt.Sprintf("it has %d clutches instead of %d", len(new.Clutches), len(old.Clutches)+clutches)
	case len(new.Diary) != len(old.Diary)+1:
		return fmt.Sprintf("it has %d diary entries instead of %d", len(new.Diary), len(old.Diary)+1)
	}
	for i := range old.Animals {
		was, is := old.Animals[i], new.Animals[i]
		follow(&was, &is, &e.Entry)
		if !equal(was, is) {
			return fmt.Sprintf("animal %q is not what it was", was.ID)
		}
	}
	for i := range e.Animals {
		if is := new.Animals[len(old.Animals)+i]; !holds(e.Animals[i], is) {
			return fmt.Sprintf("animal %q is not what it should be", e.Animals[i].ID)
		}
	}
	for i := range old.Clutches {
		if !equal(old.Clutches[i], new.Clutches[i]) {
			return fmt.Sprintf("clutch %q is not what it was", old.Clutches[i].ID)
		}
	}
	if e.Clutch != nil && !holds(*e.Clutch, new.Clutches[len(old.Clutches)]) {
		return fmt.Sprintf("clutch %q is not what it should be", e.Clutch.ID)
	}
	for i := range old.Diary {
		if !equal(old.Diary[i], new.Diary[i]) {
			return fmt.Sprintf("the diary entry in line %d is not what it was", old.Diary[i].At.Line)
		}
	}
	if !equal(e.Entry.Entry, new.Diary[len(old.Diary)]) {
		return "the new diary entry is not what it should be"
	}
	return otherwise(old, new)
}

// follow gives was what an animal has from e and is has.
func follow(was, is *collection.Animal, e *Entry) {
	if e.Animal == was.ID && e.Status == collection.Died && !was.Died.Known() && is.Died == e.On {
		was.Died = e.On
	}
	if e.Animal == was.ID && e.Status == collection.Left && !was.Left.Known() && is.Left == e.On {
		was.Left = e.On
	}
	if e.Clutch == "" || e.Clutch != was.Clutch || e.Saw == "" && e.Gosner == 0 {
		return
	}
	if is.Hatched == e.On {
		was.Hatched = e.On
	}
	if is.OutOfWater == e.On {
		was.OutOfWater = e.On
	}
}

// otherwise compares all of the file but the lists that grow. Species that are
// new come with a clutch.
func otherwise(old, new *collection.Collection) string {
	for _, p := range old.Species {
		if q, ok := new.Profile(p.ID); !ok || !equal(p, q) {
			return "species " + p.ID + " is not what it was"
		}
	}
	x, y := reflect.ValueOf(old).Elem(), reflect.ValueOf(new).Elem()
	for i := range x.NumField() {
		f := x.Type().Field(i)
		switch f.Name {
		case "Animals", "Clutches", "Diary", "Species":
			continue
		}
		if f.IsExported() && !alike(x.Field(i), y.Field(i), false) {
			return f.Name + " is not what it was"
		}
	}
	return ""
}

// equal compares two values without positions in the file.
func equal[T any](a, b T) bool { return alike(reflect.ValueOf(a), reflect.ValueOf(b), false) }

// holds compares likewise, but what meant leaves out may have been filled in.
func holds[T collection.Animal | collection.Clutch](meant, is T) bool {
	return alike(reflect.ValueOf(meant), reflect.ValueOf(is), true)
}

var position = reflect.TypeFor[strictyaml.Position]()

// alike compares a and b; with filled, a field of the struct that is zero in a
// is passed over.
func alike(a, b reflect.Value, filled bool) bool {
	switch a.Kind() {
	case reflect.Struct:
		for i := range a.NumField() {
			x, y := a.Field(i), b.Field(i)
			if x.Type() != position && !(filled && x.IsZero()) && !alike(x, y, false) {
				return false
			}
		}
		return true
	case reflect.Slice:
		if a.Len() != b.Len() {
			return false
		}
		for i := range a.Len() {
			if !alike(a.Index(i), b.Index(i), false) {
				return false
			}
		}
		return true
	case reflect.Pointer:
		if a.IsNil() || b.IsNil() || a.Pointer() == b.Pointer() {
			return a.Pointer() == b.Pointer()
		}
		return alike(a.Elem(), b.Elem(), false)
	case reflect.String:
		return a.String() == b.String()
	case reflect.Bool:
		return a.Bool() == b.Bool()
	case reflect.Float32, reflect.Float64:
		return a.Float() == b.Float()
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		return a.Int() == b.Int()
	}
	return a.CanInterface() && b.CanInterface() && reflect.DeepEqual(a.Interface(), b.Interface())
}
