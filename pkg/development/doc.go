// Package development forecasts when a clutch reaches each stage, from laid to
// sale-ready, out of the step lengths of a species profile and what the keeper
// has seen so far.
//
// [NewModel] takes a profile; [Model.Forecast] gives the early, likely and late
// date of each event for a clutch. Each step is a [Distribution] on whole days,
// and steps are added by exact convolution: no random numbers, so the same
// input gives the same answer. The likely date of a chain is the median of the
// sum. It is not the sum of the likely lengths, which comes out too early where
// steps have a long late end.
//
// The steps are taken to be independent of each other and to hold at the
// temperature that the profile gives them for. Dates are of the clutch as a
// whole, as a diary has them; siblings spread around them. Whether young are
// fit to leave is for the keeper to see, and for a veterinarian where in doubt,
// whatever the date.
package development
