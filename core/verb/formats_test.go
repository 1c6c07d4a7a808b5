package verb_test

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"slipfit/core/format"
	"slipfit/core/verb"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"
)

// TestFilesAnswerTheirSchemas holds the briefs of testdata and the builds planned for them to the schemas that slipfit
// prints, by a general validator.
func TestFilesAnswerTheirSchemas(t *testing.T) {
	valid := func(name string, data []byte) error {
		f, err := (&verb.Bench{}).FileFormat(name)
		require.NoError(t, err)
		c := jsonschema.NewCompiler()
		doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(f.Schema))
		require.NoError(t, err)
		require.NoError(t, c.AddResource("urn:slipfit:"+name, doc))
		schema, err := c.Compile("urn:slipfit:" + name)
		require.NoError(t, err)
		value, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
		require.NoError(t, err)
		return schema.Validate(value)
	}
	files, err := filepath.Glob("../../testdata/briefs/*.brief.json")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, f := range files {
		data, err := os.ReadFile(f)
		require.NoError(t, err)
		require.NoError(t, valid("brief", data), f)
	}
	for _, j := range jobs(t) {
		require.NoError(t, valid("build", format.Write(j.plan.Build)), j.name)
	}
	require.Error(t, valid("build", []byte(`{"kind":"slipfit-build","version":1,"seats":[{"seat":"sofa","part":"x"}]}`)))
	require.Error(t, valid("brief", []byte(`{"kind":"slipfit-brief","version":1,"title":"x","activities":[]}`)))
}
