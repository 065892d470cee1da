package strictyaml_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

func TestInt(t *testing.T) {
	for _, row := range []struct {
		text string
		want int
		says string // empty when the number is taken
	}{
		{"1", 1, ""},
		{"100", 100, ""},
		{"007", 7, ""},
		{`"12"`, 12, ""},
		{"0", 0, "f:1:4: n is 0; write a number from 1 to 100"},
		{"-1", 0, "f:1:4: n is -1; write a number from 1 to 100"},
		{"101", 0, "f:1:4: n is 101; write a number from 1 to 100"},
		{"999999999999999", 0, "f:1:4: n is 999999999999999; write a number from 1 to 100"},
		{"9999999999999999", 0, `f:1:4: n is "9999999999999999", not a whole number; write a whole number, such as 1`},
		{"1.0", 0, `f:1:4: n is "1.0", not a whole number; write a whole number, such as 1`},
		{"1e2", 0, `f:1:4: n is "1e2", not a whole number; write a whole number, such as 1`},
		{"0x1F", 0, `f:1:4: n is "0x1F", not a whole number; write a whole number, such as 1`},
		{"1_0", 0, `f:1:4: n is "1_0", not a whole number; write a whole number, such as 1`},
		{"+1", 0, `f:1:4: n is "+1", not a whole number; write a whole number, such as 1`},
		{"many", 0, `f:1:4: n is "many", not a whole number; write a whole number, such as 1`},
		{"12 g", 0, `f:1:4: n is "12 g", not a whole number; write a whole number, such as 1`},
		{`""`, 0, `f:1:4: n is "", not a whole number; write a whole number, such as 1`},
		{"[1]", 0, "f:1:4: n is one value, not a list; write one value"},
		{"١", 0, `f:1:4: n is "١", not a whole number; write a whole number, such as 1`},
	} {
		t.Run(row.text, func(t *testing.T) {
			doc, m := mapping(t, "n: "+row.text)
			got, ok := m.Int("n", 1, 100)
			assert.Equal(t, row.says, shown(doc.Problems()))
			assert.Equal(t, row.says == "", ok)
			assert.Equal(t, row.want, got)
		})
	}
}

func TestFloat(t *testing.T) {
	for _, row := range []struct {
		text string
		want float64
		says string
	}{
		{"0.5", 0.5, ""},
		{"100", 100, ""},
		{"12.40", 12.4, ""},
		{"0.4", 0, "f:1:4: n is 0.4; write a number from 0.5 to 100"},
		{"100.1", 0, "f:1:4: n is 100.1; write a number from 0.5 to 100"},
		{"-1", 0, "f:1:4: n is -1; write a number from 0.5 to 100"},
		{"12,4", 0, `f:1:4: n is "12,4", not a number; write a point: 12.4`},
		{".5", 0, `f:1:4: n is ".5", not a number; write a number, such as 12.5`},
		{"5.", 0, `f:1:4: n is "5.", not a number; write a number, such as 12.5`},
		{".inf", 0, `f:1:4: n is ".inf", not a number; write a number, such as 12.5`},
		{".nan", 0, `f:1:4: n is ".nan", not a number; write a number, such as 12.5`},
		{"NaN", 0, `f:1:4: n is "NaN", not a number; write a number, such as 12.5`},
		{"1e9", 0, `f:1:4: n is "1e9", not a number; write a number, such as 12.5`},
		{`""`, 0, `f:1:4: n is "", not a number; write a number, such as 12.5`},
		{"{a: 1}", 0, "f:1:4: n is one value, not a set of keys and values; write one value"},
	} {
		t.Run(row.text, func(t *testing.T) {
			doc, m := mapping(t, "n: "+row.text)
			got, ok := m.Float("n", 0.5, 100)
			assert.Equal(t, row.says, shown(doc.Problems()))
			assert.Equal(t, row.says == "", ok)
			assert.Equal(t, row.want, got)
		})
	}
}

// TestQuantityConverts compares without tolerance: the factors are exact, and so
// is the text of the nearest float.
func TestQuantityConverts(t *testing.T) {
	for _, row := range []struct {
		text string
		unit strictyaml.Unit
		want float64
	}{
		{"n_g: 12.4", strictyaml.Grams(), 12.4},
		{"n: 12.4 g", strictyaml.Grams(), 12.4},
		{"n: 12.4g", strictyaml.Grams(), 12.4},
		{"n: 0.25 kg", strictyaml.Grams(), 250},
		{"n: 9 mg", strictyaml.Grams(), 0.009},
		{"n: 1 oz", strictyaml.Grams(), 28.349523125},
		{"n: 16 oz", strictyaml.Grams(), 453.59237},
		{"n_mm: 55", strictyaml.Millimetres(), 55},
		{"n: 55 mm", strictyaml.Millimetres(), 55},
		{"n: 5.5 cm", strictyaml.Millimetres(), 55},
		{"n: 1 in", strictyaml.Millimetres(), 25.4},
		{"n: 2.5 in", strictyaml.Millimetres(), 63.5},
		{"n_c: 25", strictyaml.Celsius(), 25},
		{"n: 25 °C", strictyaml.Celsius(), 25},
		{"n: 25C", strictyaml.Celsius(), 25},
		{"n: 77 °F", strictyaml.Celsius(), 25},
		{"n: 77 F", strictyaml.Celsius(), 25},
		{"n: 212 °F", strictyaml.Celsius(), 100},
		{"n: 32 °F", strictyaml.Celsius(), 0},
		{"n: -40 °F", strictyaml.Celsius(), -40},
	} {
		t.Run(row.text, func(t *testing.T) {
			doc, m := mapping(t, row.text)
			got, ok := m.Quantity("n", row.unit, -100, 1000)
			assert.Empty(t, shown(doc.Problems()))
			assert.True(t, ok)
			assert.Equal(t, row.want, got)
			m.Done()
			assert.Empty(t, shown(doc.Problems()))
		})
	}
}

func TestQuantityRefuses(t *testing.T) {
	for _, row := range []struct{ name, text, says string }{
		{"no unit", "n: 12.4", "f:1:4: n 12.4 has no unit; write n_g: 12.4, or n: 12.4 g"},
		{"unit twice", "n_g: 12.4 g", `f:1:6: n_g is "12.4 g", not a number; write n_g: 12.4`},
		{"another unit behind the key's", "n_g: 0.44 oz", `f:1:6: n_g is "0.44 oz", not a number; write n: 0.44 oz`},
		{"the same with a comma, in capitals", `n_g: "0,44OZ"`, `f:1:6: n_g is "0,44OZ", not a number; write n: 0.44 oz`},
		{"no unit behind the key's", "n_g: 12 feet", `f:1:6: n_g is "12 feet", not a number; write a number, such as 12.5`},
		{"another unit in the key", "n_oz: 0.44", `f:1:1: unknown key "n_oz" in an animal; write n: 0.44 oz`},
		{"the same without a number", "n_oz: light", `f:1:1: unknown key "n_oz" in an animal; write n: 12.5 oz`},
		{"no unit that is known in the key", "n_lb: 0.44", `f:1:1: unknown key "n_lb" in an animal; units known here: g, kg, mg, oz; write n: and the number with its unit`},
		{"unit in the key of no quantity", "m_oz: 0.44", `f:1:1: unknown key "m_oz" in an animal; known here: n_g, n`},
		{"both keys", "n_g: 12.4\nn: 12.4 g", "f:2:4: n_g and n say the same thing; keep one of them"},
		{"unknown unit", "n: 12 lb", `f:1:4: n has the unknown unit "lb"; units known here: g, kg, mg, oz`},
		{"unit of another kind", "n: 12 mm", `f:1:4: n has the unknown unit "mm"; units known here: g, kg, mg, oz`},
		{"unit in capitals", "n: 12 G", `f:1:4: n has the unknown unit "G"; units known here: g, kg, mg, oz`},
		{"comma", "n: 0,44 oz", `f:1:4: n is "0,44 oz"; write a point: 0.44 oz`},
		{"two numbers", "n: 12 g 3", `f:1:4: n is "12 g 3"; write a number and its unit, such as n: 12.5 g`},
		{"no number", "n: heavy", `f:1:4: n is "heavy"; write a number and its unit, such as n: 12.5 g`},
		{"two blanks", "n: 12  g", `f:1:4: n is "12  g"; write a number and its unit, such as n: 12.5 g`},
		{"nothing in quotes", `n: ""`, `f:1:4: n is ""; write a number and its unit, such as n: 12.5 g`},
		{"too small", "n: 4 mg", "f:1:4: n is 4 mg; write a quantity from 0.01 to 1000 g"},
		{"too large", "n: 1.001 kg", "f:1:4: n is 1.001 kg; write a quantity from 0.01 to 1000 g"},
		{"too large in the base unit", "n_g: 1001", "f:1:6: n_g is 1001; write a number from 0.01 to 1000, or n: 1001 mg"},
		{"in no unit", "n_g: 2000000", "f:1:6: n_g is 2000000; write a number from 0.01 to 1000"},
		{"another unit without it", "n: 2000", "f:1:4: n 2000 has no unit; if it is in mg, write n: 2000 mg"},
		{"no unit would do", "n: -1", "f:1:4: n -1 has no unit; write n_g: and a number from 0.01 to 1000"},
		{"list", "n: [12 g]", "f:1:4: n is one value, not a list; write one value"},
	} {
		t.Run(row.name, func(t *testing.T) {
			doc, m := mapping(t, row.text)
			got, ok := m.Quantity("n", strictyaml.Grams(), 0.01, 1000)
			m.Done()
			assert.Equal(t, row.says, shown(doc.Problems()))
			assert.False(t, ok)
			assert.Zero(t, got)
		})
	}
}
