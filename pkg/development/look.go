package development

import "github.com/spawnwright/spawnwright/pkg/civil"

// Look is what somebody saw of a clutch on one day.
type Look struct {
	Stage Stage
	On    civil.Date
	Kind  LookKind
}

// LookKind says what a look tells about its stage.
type LookKind int

const (
	Reached LookKind = iota // it began on that day
	NotYet                  // at the end of that day it had not begun
	By                      // on that day it had begun; when is not known
)
