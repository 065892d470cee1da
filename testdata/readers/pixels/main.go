// Pixels fails when a PNG file is blank, or as good as blank.
package main

import (
	"fmt"
	"image"
	"image/color"
	_ "image/png"
	"os"
)

func main() {
	blank := false
	for _, path := range os.Args[1:] {
		colours, ground, err := count(path)
		switch {
		case err != nil:
			fmt.Fprintln(os.Stderr, err)
			blank = true
		case colours < 20 || ground > 0.995:
			fmt.Fprintf(os.Stderr, "%s: %d colours, and %.1f %% is the ground\n", path, colours, 100*ground)
			blank = true
		}
	}
	if blank {
		os.Exit(1)
	}
	fmt.Printf("%d pictures drawn, none blank\n", len(os.Args)-1)
}

// count gives how many colours a picture has, and the share of the most frequent.
func count(path string) (colours int, ground float64, err error) {
	f, err := os.Open(path)
	if err != nil {
		return 0, 0, err
	}
	defer f.Close()
	picture, _, err := image.Decode(f)
	if err != nil {
		return 0, 0, fmt.Errorf("%s: %w", path, err)
	}
	seen, most := make(map[color.RGBA64]int), 0
	box := picture.Bounds()
	for y := box.Min.Y; y < box.Max.Y; y++ {
		for x := box.Min.X; x < box.Max.X; x++ {
			r, g, b, a := picture.At(x, y).RGBA()
			c := color.RGBA64{uint16(r), uint16(g), uint16(b), uint16(a)}
			seen[c]++
			most = max(most, seen[c])
		}
	}
	return len(seen), float64(most) / float64(box.Dx()*box.Dy()), nil
}
