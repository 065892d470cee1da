// Package pedigree computes with who descends from whom.
package pedigree

import "io"

type Record struct{ ID, Sire, Dam string }

type Pedigree struct{}

func New(records []Record, groups ...Group) (*Pedigree, error) { panic("pedigree: not built yet") }
func ReadCSV(r io.Reader) ([]Record, error)                    { panic("pedigree: not built yet") }

func (p *Pedigree) Len() int                                     { panic("pedigree: not built yet") }
func (p *Pedigree) ID(i int) string                              { panic("pedigree: not built yet") }
func (p *Pedigree) Index(id string) (int, bool)                  { panic("pedigree: not built yet") }
func (p *Pedigree) Parents(i int) (sire, dam Parent)             { panic("pedigree: not built yet") }
func (p *Pedigree) Inbreeding(i int) float64                     { panic("pedigree: not built yet") }
func (p *Pedigree) Kinship(i, j int) float64                     { panic("pedigree: not built yet") }
func (p *Pedigree) KinshipTo(j int) []float64                    { panic("pedigree: not built yet") }
func (p *Pedigree) MeanKinship(living []int) []float64           { panic("pedigree: not built yet") }
func (p *Pedigree) GeneDiversity(living []int) float64           { panic("pedigree: not built yet") }
func (p *Pedigree) SharedAncestors(i, j int) []SharedAncestor    { panic("pedigree: not built yet") }
func (p *Pedigree) Ancestors(i int) []int                        { panic("pedigree: not built yet") }
func (p *Pedigree) Descendants(i int) []int                      { panic("pedigree: not built yet") }
func (p *Pedigree) Generation(i int) int                         { panic("pedigree: not built yet") }
func (p *Pedigree) CompleteGenerations(i int) float64            { panic("pedigree: not built yet") }
func (p *Pedigree) Uncertain(i int) bool                         { panic("pedigree: not built yet") }
func (p *Pedigree) ExpectedInbreeding(sires, dams []int) float64 { panic("pedigree: not built yet") }

type Group struct {
	ID         string
	Kind       GroupKind
	Candidates []Candidate
}
type Candidate struct {
	ID     string
	Weight float64
}
type GroupKind int

const (
	OneUnknown GroupKind = iota
	Several
)

type Parent struct {
	Known      bool
	Candidates []Share
	Group      string
	Kind       GroupKind
}
type Share struct {
	Animal      int
	Probability float64
}
type SharedAncestor struct {
	Animal int
	Share  float64
}

type DuplicateError struct{ ID string }
type UnknownParentError struct{ Child, Parent, Role string }
type LoopError struct{ Members []string }
type GroupError struct{ Group, Message string }
type TableError struct {
	Line, Column int
	Message      string
}

func (e *DuplicateError) Error() string     { return e.ID }
func (e *UnknownParentError) Error() string { return e.Parent }
func (e *LoopError) Error() string          { return "loop" }
func (e *GroupError) Error() string         { return e.Message }
func (e *TableError) Error() string         { return e.Message }
