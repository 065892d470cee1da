package parentage

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A table beyond what places in 32 bits can tell is refused; this one is small.
func TestLimit(t *testing.T) {
	const text = "id,sire,dam\na,,\n"
	_, err := parse([]byte(text), Options{}, len(text))
	require.NoError(t, err)
	_, err = parse([]byte(text), Options{}, len(text)-1)
	require.EqualError(t, err, "parentage: 1:1: the table has more than 15 bytes; split the table")
}
