package collection

// Given is a value that may have been left out of the file, where zero means
// something else than nothing.
type Given[T any] struct {
	Value T
	Known bool // false when it was left out; Value is zero then
}
