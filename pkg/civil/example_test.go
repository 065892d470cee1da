package civil_test

import (
	"errors"
	"fmt"
	"time"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

func Example() {
	laid, err := civil.Parse("2027-02-14")
	if err != nil {
		panic(err)
	}
	hatched := civil.Window{Early: laid.Add(5), Likely: laid.Add(7), Late: laid.Add(10)}
	fmt.Println(hatched)
	fmt.Println(hatched.Late.Weekday(), hatched.Late.Sub(laid), "days later")
	// Output:
	// 2027-02-19 / 2027-02-21 / 2027-02-24
	// Wednesday 10 days later
}

func ExampleParse() {
	_, err := civil.Parse("2027-02-29")
	var problem *civil.ParseError
	fmt.Println(errors.As(err, &problem))
	fmt.Println(problem.Reason)
	// Output:
	// true
	// is not a date: 2027-02 has days 01 to 28
}

func ExampleParseSpan() {
	away, err := civil.ParseSpan("2027-05-08..2027-05-16")
	if err != nil {
		panic(err)
	}
	fmt.Println(away.Days(), away.Contains(civil.Of(2027, time.May, 16)))
	// Output: 9 true
}

func ExampleDate_Add() {
	fmt.Println(civil.Of(2028, time.February, 28).Add(1))
	// Output: 2028-02-29
}
