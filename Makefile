# What continuous integration runs (.ci/run), one target each.

GO ?= go
tool := $(GO) tool -modfile=.tools/go.mod

BENCH ?= .
BENCHTIME ?= 1s
BENCHFLAGS ?=
FUZZTIME ?= 10s

# Packages that compute, which also run where there is no file system to speak of.
computing := $(addprefix ./pkg/,breedingplan calendar civil development diversity horizon lineage occupancy pairing parcel parentage pedigree planner season species strictyaml svg timetable)

.PHONY: demo test check format vet lint dead tidy vulns race bench fuzz cross wasm readers optimum build pictures

demo:
	$(GO) run ./cmd/spawnwright season -f examples/working/collection.yaml --on 2027-02-01

test:
	$(GO) test ./...

check: format vet lint dead tidy vulns

format:
	@files=$$($(tool) gofumpt -l .) && if [ -n "$$files" ]; then \
		echo "Not formatted; run: go tool -modfile=.tools/go.mod gofumpt -w ."; echo "$$files"; exit 1; fi

vet:
	$(GO) vet ./...

lint:
	$(tool) staticcheck ./...

# Functions that neither the command nor a test reaches.
dead:
	@found=$$($(tool) deadcode -test ./...) && if [ -n "$$found" ]; then echo "$$found"; exit 1; fi

tidy:
	$(GO) mod tidy -diff
	$(GO) -C .tools mod tidy -diff

vulns:
	.ci/vulnerabilities

race:
	$(GO) test -race -short ./...

bench:
	$(GO) test $(BENCHFLAGS) -run '^$$' -bench '$(BENCH)' -benchtime $(BENCHTIME) -benchmem ./...

# Recording is tried on 10,000 drawn files; `go test` draws 100.
fuzz:
	$(GO) test -count=1 -run '^TestRoundTrip$$' ./pkg/record -rapid.checks=10000
	.ci/fuzz $(FUZZTIME)

# The systems that are promised, and a machine with 32 bits.
cross:
	GOOS=windows GOARCH=amd64 $(GO) vet ./...
	GOOS=darwin GOARCH=arm64 $(GO) vet ./...
	GOOS=linux GOARCH=arm64 $(GO) vet ./...
	GOOS=linux GOARCH=386 CGO_ENABLED=0 $(GO) vet ./...
	GOOS=windows GOARCH=amd64 $(GO) build -o .build/windows/ ./cmd/spawnwright
	GOOS=darwin GOARCH=arm64 $(GO) build -o .build/darwin/ ./cmd/spawnwright
	GOOS=linux GOARCH=arm64 $(GO) build -o .build/linux-arm64/ ./cmd/spawnwright
	GOOS=wasip1 GOARCH=wasm $(GO) build $(computing)

# Node.js stands in for a system that is not Unix: the tests of what differs there.
wasm:
	GOOS=js GOARCH=wasm $(GO) test -exec "$$($(GO) env GOROOT)/lib/wasm/go_js_wasm_exec" ./pkg/wholefile ./pkg/civil

build:
	$(GO) build -trimpath -o .build/ ./cmd/spawnwright

# The pictures of the documentation, from the working example. A test compares them
# with what the program makes, but for the lineage, of which it compares what
# Graphviz draws from: each version of Graphviz draws a little otherwise.
pictures:
	$(GO) test -count=1 -run '^TestPictures$$' ./cmd/spawnwright -update
	dot -Tsvg docs/pictures/lineage.dot -o docs/pictures/lineage.svg

# Programs of others read what this one writes.
readers: build
	testdata/readers/run .build/spawnwright

# The stored seasons of 250 days that HiGHS proves within a few seconds each.
QUICK_ROOMS = 00 01 07 14 21 22 28

# Another solver finds the best pairings of the stored choices, and proves the
# least costs of stored seasons.
optimum:
	testdata/optimum/run
	/usr/bin/python3 testdata/season/milp.py --check --seconds 120 testdata/season/half-*.json $(QUICK_ROOMS:%=testdata/season/room-%.json)
