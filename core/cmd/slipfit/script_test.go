package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write the golden parts of the scripts anew")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"slipfit":  func() { os.Exit(run(context.Background(), os.Args[1:], os.Stdout, os.Stderr)) },
		"stubborn": stubborn,
	})
}

// stubborn is a search that does not end when it is told to.
func stubborn() {
	k := &call{ctx: context.Background(), flags: flag.NewFlagSet("stubborn", flag.ExitOnError), err: os.Stderr}
	ctx, _, _ := k.search()
	fmt.Println("searching")
	<-ctx.Done()
	fmt.Println("told")
	time.Sleep(time.Minute)
}

// TestScripts runs the real command line: testdata/script/*.txtar, one script a verb or a way to be wrong.
func TestScripts(t *testing.T) {
	root, err := filepath.Abs("../../..")
	require.NoError(t, err)
	testscript.Run(t, testscript.Params{
		Dir:                 filepath.Join(root, "testdata/script"),
		UpdateScripts:       *update,
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup: func(e *testscript.Env) error {
			e.Setenv("BRIEFS", filepath.Join(root, "testdata/briefs"))
			e.Setenv("CATALOG", filepath.Join(root, "catalog"))
			return nil
		},
	})
}
