package main

import (
	"errors"
	"fmt"
	"regexp"
	"strings"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// subcommand refuses an argument of a command that only has commands below it.
func subcommand(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	var names []string
	for _, sub := range c.Commands() {
		if sub.IsAvailableCommand() {
			names = append(names, sub.Name())
		}
	}
	cure := strictyaml.DidYouMean(args[0], names)
	if cure == "" {
		cure = "there are " + strings.Join(names, ", ")
	}
	return usagef("there is no command %q; %s", c.CommandPath()+" "+args[0], cure)
}

// noArguments refuses any argument. Most often it is the name of a file.
func noArguments(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return usagef("%s takes no arguments, but got %q; the keeper's file is named with -f", c.Name(), args[0])
}

// atMost refuses more than a number of arguments.
func atMost(most int, what string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		if len(args) <= most {
			return nil
		}
		return usagef("%s takes at most %d %s, but got %d", c.Name(), most, what, len(args))
	}
}

// wrongValue is how the reader of flags tells of a value; what it adds is about its own
// language.
var wrongValue = regexp.MustCompile(`^invalid argument ("(?:[^"\\]|\\.)*") for "(?:-., )?--([a-z-]+)" flag`)

// kinds says what the flags of a type take.
var kinds = map[string]string{
	"int": "a whole number", "uint64": "a whole number, not below 0", "float64": "a number, with a point",
	"duration": "a time, such as 10s", "bool": "true or false, or nothing",
}

var flagName = regexp.MustCompile(`--([a-z-]+)`)

// wrongFlag says what is wrong with a flag, and which one may be meant.
func wrongFlag(c *cobra.Command, err error) error {
	var unknown interface{ GetSpecifiedName() string }
	if match := wrongValue.FindStringSubmatch(err.Error()); match != nil {
		if must := kinds[c.Flags().Lookup(match[2]).Value.Type()]; must != "" {
			return usagef("--%s %s: write %s", match[2], match[1], must)
		}
	}
	if !errors.As(err, &unknown) || !strings.HasPrefix(err.Error(), "unknown flag") {
		return usage(err)
	}
	var names []string
	for _, m := range flagName.FindAllStringSubmatch(c.Flags().FlagUsages(), -1) {
		names = append(names, m[0])
	}
	if cure := strictyaml.DidYouMean("--"+unknown.GetSpecifiedName(), names); cure != "" {
		err = fmt.Errorf("%w; %s", err, cure)
	}
	return usage(err)
}

// exactly refuses any other number of arguments than are named.
func exactly(names ...string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		if len(args) == len(names) {
			return nil
		}
		return usagef("%s takes %s, but got %s", c.Name(), strings.Join(names, " and "), plural(len(args), "argument"))
	}
}

// unitAlone is the unit of a measure that was given as an argument of its own.
var unitAlone = regexp.MustCompile(`^°?\p{L}+$`)

// measured refuses all but a subject and a measure, whose unit may stand alone:
// 12.4 g.
func measured(names ...string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		if len(args) == 3 && unitAlone.MatchString(args[2]) {
			return nil
		}
		return exactly(names...)(c, args)
	}
}

// atLeast refuses fewer arguments than are named.
func atLeast(names ...string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		if len(args) >= len(names) {
			return nil
		}
		return exactly(names...)(c, args)
	}
}
