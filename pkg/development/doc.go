// Package development forecasts when a clutch reaches each stage, from laid to
// sale-ready, out of the step lengths of a species profile and what the keeper
// has seen so far.
//
// [NewModel] takes a profile; [Model.Outlook] gives the early, likely and late
// date of each event for a clutch, with all that is known of it: days counted by
// their temperature, one pace that it keeps through all steps, every look, and what
// [Model.Learn] found in the keeper's own clutches. Everything is worked out on whole
// days: no random numbers, so the same input gives the same answer. The likely date
// of a chain is the median of the sum. It is not the sum of the likely lengths, which
// comes out too early where steps have a long late end.
//
// From an [Outlook] come the first and the last of the siblings, the heads for each
// day, and what to do at each stage.
//
// Dates are of half of a clutch; siblings spread around them. Whether young are
// fit to leave is never said by a date alone: [SaleReadiness] wants age, size and
// a meal seen, and a veterinarian is there where in doubt.
package development
