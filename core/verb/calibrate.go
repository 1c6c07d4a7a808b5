package verb

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"slipfit/core/format"
	"slipfit/core/outcome"
	"slipfit/core/part"
)

// Calibration is what measurements come to: the coefficients before and after, how far each measurement lies from them, and
// the catalog's file with them in it.
type Calibration struct {
	format.Head
	Fits []Fit  `json:"fits"`
	File string `json:"file"` // calibration.json
}

// Fit is the coefficients of one measure.
type Fit struct {
	Measure      string        `json:"measure"`
	Coefficients []Coefficient `json:"coefficients"`
	Note         string        `json:"note,omitempty"`
	Spread       float64       `json:"spread_percent"` // root mean square of the residuals
	Residuals    []Residual    `json:"residuals"`
}

// Coefficient is one field of the calibration block before and after. Shares are in per cent.
type Coefficient struct {
	Field string  `json:"field"`
	Old   float64 `json:"old"`
	New   float64 `json:"new"`
}

// Residual is one measurement against what the coefficients tell.
type Residual struct {
	Line     int     `json:"line"`
	Measured float64 `json:"measured"`
	Told     float64 `json:"told"`
	Off      float64 `json:"off_percent"` // told less measured, of measured
}

// measurementColumns is the header of a file of measurements.
var measurementColumns = []string{"measure", "amount", "single_points", "all_points", "graphics_points", "measured"}

// Measure describes one thing that can be measured.
type Measure struct {
	Name     string   `json:"measure"`
	Amount   string   `json:"amount,omitempty"`
	Reads    string   `json:"reads"`
	Measured string   `json:"measured"`
	Fields   []string `json:"fields"`
}

// Measures lists what can be measured and how its line is filled in.
func Measures() []Measure {
	var list []Measure
	for _, m := range outcome.Measures() {
		list = append(list, Measure{m.Name, m.Amount, m.Reads, m.Measured, m.Fields()})
	}
	return list
}

// calibrationFile is the catalog's file.
type calibrationFile struct {
	format.Head
	Calibration part.Calibration `json:"calibration"`
}

// Calibrate fits the coefficients of the catalog's calibration block to a CSV file of measurements. Lines of one measure are
// fitted together by least squares; what nobody measured stays.
func (w *Bench) Calibrate(file Document) (*Calibration, error) {
	list, err := measurements(file)
	if err != nil {
		return nil, err
	}
	cal, fits, err := outcome.Fit(w.Stock.Calibration, list)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", file.Name, err)
	}
	text := format.Write(calibrationFile{format.Head{Kind: "slipfit-calibration", Version: 1}, cal})
	var back calibrationFile
	if err := format.Read(file.Name+": fitted", text, "slipfit-calibration", 1, &back); err != nil {
		return nil, err
	}
	out := &Calibration{Head: head("slipfit-fit"), File: string(text)}
	for i := range fits {
		out.Fits = append(out.Fits, fitOf(&fits[i]))
	}
	return out, nil
}

func fitOf(f *outcome.Fitted) Fit {
	out := Fit{Measure: f.Measure, Note: f.Note, Spread: f.RMS * 100}
	for _, c := range f.Coefficients {
		per := 1.0
		if strings.HasSuffix(c.Field, "_percent") {
			per = 1000
		}
		out.Coefficients = append(out.Coefficients, Coefficient{c.Field, float64(c.Old) / per, float64(c.New) / per})
	}
	for _, r := range f.Residuals {
		out.Residuals = append(out.Residuals, Residual{r.Line, r.Measured, r.Told, (r.Told - r.Measured) / r.Measured * 100})
	}
	return out
}

// measurements reads a CSV file: the header, then a line a measurement; lines that begin with # are comments. Every line that
// is wrong is told.
func measurements(file Document) ([]outcome.Measurement, error) {
	r := csv.NewReader(bytes.NewReader(file.Data))
	r.Comment, r.TrimLeadingSpace = '#', true
	header, err := r.Read()
	if err != nil || !slices.Equal(header, measurementColumns) {
		return nil, fmt.Errorf("%s: line 1: got %q, want the columns %s", file.Name, strings.Join(header, ","), strings.Join(measurementColumns, ","))
	}
	var list []outcome.Measurement
	var errs []error
	for {
		fields, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w", file.Name, err)
		}
		line, _ := r.FieldPos(0)
		m, err := measurement(line, fields)
		if err != nil {
			errs = append(errs, fmt.Errorf("%s: line %d: %w", file.Name, line, err))
			continue
		}
		list = append(list, m)
	}
	if len(list) == 0 && len(errs) == 0 {
		errs = append(errs, fmt.Errorf("%s: no measurement, want a line for each", file.Name))
	}
	return list, errors.Join(errs...)
}

// measurement reads one line and makes sure that what its measure reads is there.
func measurement(line int, fields []string) (outcome.Measurement, error) {
	m := outcome.Measurement{Line: line, Measure: fields[0]}
	at := slices.IndexFunc(outcome.Measures(), func(x outcome.Measure) bool { return x.Name == m.Measure })
	if at < 0 {
		var names []string
		for _, x := range outcome.Measures() {
			names = append(names, x.Name)
		}
		return m, fmt.Errorf("measure: got %q, want one of %s", m.Measure, strings.Join(names, ", "))
	}
	want := outcome.Measures()[at]
	for i, c := range []struct {
		into *float64
		asks bool
	}{{&m.Amount, want.Amount != ""}, {&m.Single, strings.Contains(want.Reads, "single")}, {&m.All, strings.Contains(want.Reads, "all")},
		{&m.Graphics, strings.Contains(want.Reads, "graphics")}, {&m.Measured, true}} {
		text := fields[i+1]
		if text == "" && !c.asks {
			continue
		}
		v, err := strconv.ParseFloat(text, 64)
		if err != nil || !(v > 0 && v < 1e12) {
			return m, fmt.Errorf("%s: got %q, want a number above nought for %s", measurementColumns[i+1], text, m.Measure)
		}
		*c.into = v
	}
	return m, nil
}
