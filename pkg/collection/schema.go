package collection

import "github.com/spawnwright/spawnwright/pkg/strictyaml"

// What the reader takes for the values that are its own.
var (
	dateSchema    = &strictyaml.Schema{Type: []string{"string"}, Format: "date", Pattern: `^(19|20|21)\d\d-\d\d-\d\d$`}
	spanSchema    = &strictyaml.Schema{Type: []string{"string"}, Pattern: `^(19|20|21)\d\d-\d\d-\d\d(\.\.(19|20|21)\d\d-\d\d-\d\d)?$`}
	idSchema      = lineSchema(`^[^\s,]([^\n,]*[^\s,])?$`, maxID)
	phraseSchema  = lineSchema(`^(\S(.*\S)?)?$`, maxPhrase)
	speciesSchema = lineSchema(`^[a-z0-9]+(-[a-z0-9]+)*$`, 0)
	codeSchema    = lineSchema(holidayCode.String(), 0)
	ruleSchema    = lineSchema(ruleName.String(), 0)
	refsSchema    = strictyaml.Either(idSchema, strictyaml.ListOf(idSchema, 1, maxParents))
	spaceSchema   = strictyaml.ListOf(strictyaml.WholeFrom(1, 99), 2, 2)
)

func lineSchema(pattern string, longest int) *strictyaml.Schema {
	s := strictyaml.AnyText()
	s.Pattern, s.MaxLength = pattern, longest
	return s
}

// Schema gives the form of the file as JSON Schema (draft 2020-12). It is found
// by running the reader, so that it has the keys and limits of [Read] and no
// others. What hangs together between values is for [Read] alone, which also
// takes numbers and words in quotes.
func Schema() *strictyaml.Schema {
	s := strictyaml.SchemaOf(func(doc *strictyaml.Document) { newReader(doc).sections() })
	s.Draft = "https://json-schema.org/draft/2020-12/schema"
	s.Title = "collection file of spawnwright"
	return s
}
