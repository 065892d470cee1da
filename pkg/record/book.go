package record

import (
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Book is the text of a collection file and what it means.
type Book struct {
	Collection *collection.Collection

	file     string
	text     text
	outline  collection.Outline
	problems strictyaml.Diagnostics
	window   int // bytes above which only what matters is read back
}

// smallFile is the size up to which the whole file is read back: many years of
// records of a room.
const smallFile = 256 << 10

// Read reads data as a collection; file is only shown in messages. The book is
// nil when the file has errors, which the diagnostics give beside the warnings.
// The book keeps data, which must not be changed afterwards.
func Read(file string, data []byte) (*Book, strictyaml.Diagnostics) {
	c, problems := collection.Read(file, data)
	if c == nil {
		return nil, problems
	}
	return &Book{
		Collection: c, file: file, text: newText(data), outline: c.Outline(), problems: problems, window: smallFile,
	}, problems
}
