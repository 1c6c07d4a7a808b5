# slipfit: thin names for the commands behind them.

GO      ?= go
BRIEF   ?= testdata/briefs/museum-pottery.brief.json
ADDRESS ?= 127.0.0.1:8080
OUT     ?= build/export
PREFIX  ?=

SLIPFIT = build/slipfit
GOROOT  = $(shell $(GO) env GOROOT)

.PHONY: run test bench lint build page site wasm-test clean

# the main job: the demo brief becomes a proven, priced build; then the page is served on loopback
run: build page
	$(SLIPFIT) needs $(BRIEF)
	$(SLIPFIT) plan $(BRIEF) -out build/demo.build.json
	$(SLIPFIT) prove build/demo.build.json -brief $(BRIEF)
	$(SLIPFIT) serve -site build/site -address $(ADDRESS)

build:
	@mkdir -p build
	$(GO) build -trimpath -o $(SLIPFIT) ./core/cmd/slipfit

# the programs of the page and its worker, as serve and export want them
page:
	@mkdir -p build/site
	GOOS=js GOARCH=wasm $(GO) build -trimpath -buildvcs=false -ldflags "-s -w" -o build/site/page.wasm ./wasm/page
	GOOS=js GOARCH=wasm $(GO) build -trimpath -buildvcs=false -ldflags "-s -w" -o build/site/worker.wasm ./wasm/worker
	cp "$(GOROOT)/lib/wasm/wasm_exec.js" build/site/

# a folder of static files that any web server can give out; PREFIX is the path it is mounted under
site: build page
	rm -rf $(OUT)
	$(SLIPFIT) export $(OUT) -site build/site -prefix "$(PREFIX)"

test:
	.ci/tools
	$(GO) vet ./...
	$(GO) test -timeout 45m ./...
	$(MAKE) wasm-test

# the core's tests once more, as the browser runs them
wasm-test:
	GOOS=js GOARCH=wasm $(GO) test -timeout 45m -exec "$(GOROOT)/lib/wasm/go_js_wasm_exec" ./core/unit ./core/format ./core/part ./core/feed ./core/air ./core/sound ./core/link ./core/media ./core/build ./core/brief ./core/predict ./core/rule ./core/scene ./core/chart ./core/plan ./core/outcome ./core/balance ./core/sheet ./core/verb

# the Go benchmarks, then the planner's table: see DEVELOPERS.md
bench:
	$(GO) test -run '^$$' -bench . -benchtime 200ms -benchmem ./core/... ./catalog/...
	@mkdir -p build
	$(GO) build -trimpath -o build/bench ./core/cmd/bench
	GOOS=js GOARCH=wasm $(GO) build -trimpath -o build/bench.wasm ./core/cmd/bench
	build/bench -worker "$(GOROOT)/lib/wasm/go_js_wasm_exec build/bench.wasm"

lint:
	@test -z "$$(gofmt -s -l core catalog web wasm)" || { gofmt -s -d core catalog web wasm; exit 1; }
	$(GO) vet ./...
	GOOS=js GOARCH=wasm $(GO) vet ./wasm/... ./web/...
	$(GO) run honnef.co/go/tools/cmd/staticcheck@v0.8.2 ./...

clean:
	rm -rf build
