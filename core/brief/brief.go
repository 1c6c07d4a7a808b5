// Package brief turns what a customer does into what a machine must give. A brief holds activities with parameters in the
// customer's own units, one file an activity; Needs gathers what they ask into a floor and an enough for every resource, each
// with its arithmetic and its source. What was not said is taken, and said to be taken.
package brief

import (
	"errors"
	"fmt"

	"slipfit/core/format"
	"slipfit/core/unit"
)

// Kind and Version of brief files.
const (
	Kind    = "slipfit-brief"
	Version = 1
)

// Brief is what a customer said, as the consultant wrote it down. Whatever was not said is left out: every figure of an
// activity may be, and Needs then takes a usual one, gives room for more, and says so.
type Brief struct {
	format.Head
	Title      string                  `json:"title" doc:"What the job is called."`
	Who        string                  `json:"who,omitempty" doc:"Who it is for."`
	Said       []string                `json:"said,omitempty" doc:"What they said, in their words."`
	Activities []Activity              `json:"activities" min:"1" doc:"What they do with the machine, one kind of work each."`
	Screens    []Screen                `json:"screens,omitempty" doc:"Screens to be fed, owned or to be bought; left out, one is taken that suits the work."`
	Network    string                  `json:"network,omitempty" pattern:"^(cable|radio|both|none)$" doc:"How the machine reaches the network: cable, radio, both or none; a cable of 1000 Mbit/s where not said."`
	Place      Place                   `json:"place,omitzero" doc:"Where it stands."`
	Wish       Wish                    `json:"wishes,omitzero" doc:"What they would like or will not have."`
	ECC        bool                    `json:"error_correcting,omitempty" doc:"Whether memory must correct errors."`
	Copies     bool                    `json:"copies,omitempty" doc:"Whether what is kept must lie on two drives of the machine."`
	Budget     unit.Figure[unit.Money] `json:"budget_minor,omitzero" range:"10000..100000000" doc:"What they can spend in all, labour and tax included, minor units of the shop's currency."`
	Owned      []Owned                 `json:"owned,omitempty" doc:"Parts they have already and want used."`
}

// Owned is a part that the customer has already.
type Owned struct {
	Seat  string `json:"seat" doc:"Seat it is for, by its word."`
	Part  string `json:"part" doc:"Id of the part in the catalog."`
	Count int    `json:"count,omitempty" range:"1..24" doc:"How many they have: kits of memory, drives, fans (not packs). Left out for one, or one pack of fans."`
}

// Activity is one kind of work. Exactly one of its kinds is given.
type Activity struct {
	Said   string                  `json:"said,omitempty" doc:"What the customer said of it."`
	AtOnce bool                    `json:"at_once,omitempty" doc:"Whether it goes on while the others do; otherwise one thing is done at a time."`
	Hours  unit.Figure[unit.Whole] `json:"hours_week,omitzero" range:"0..168" doc:"Hours a week it is done; 20 where not said."`

	Video          *Video          `json:"video,omitzero" doc:"Cutting and grading video."`
	Modelling      *Modelling      `json:"modelling,omitzero" doc:"Modelling and rendering in three dimensions."`
	Photogrammetry *Photogrammetry `json:"photogrammetry,omitzero" doc:"Models made from photographs."`
	Photography    *Photography    `json:"photography,omitzero" doc:"Developing and retouching photographs."`
	Games          *Games          `json:"games,omitzero" doc:"Playing games."`
	Software       *Software       `json:"software,omitzero" doc:"Writing and building software."`
	Sound          *Sound          `json:"sound,omitzero" doc:"Recording, mixing and searching sound; music."`
	Statistics     *Statistics     `json:"statistics,omitzero" doc:"Statistics and data tables."`
	LocalModels    *LocalModels    `json:"local_models,omitzero" doc:"Running language models on the machine itself."`
	Drafting       *Drafting       `json:"drafting,omitzero" doc:"Technical drawing and construction in three dimensions."`
	Live           *Live           `json:"live,omitzero" doc:"Sending pictures and sound live."`
	Guests         *Guests         `json:"virtual_machines,omitzero" doc:"Running other systems inside this one."`
	Office         *Office         `json:"office,omitzero" doc:"Office and home."`
	Server         *Server         `json:"server,omitzero" doc:"Serving files and programs to others from a corner."`
}

// kind is an activity's parameters: what they ask.
type kind interface {
	name() string
	ask(a *asker)
}

// given lists the kinds that are given; Read makes sure that it is one.
func (a *Activity) given() []kind {
	var list []kind
	if a.Video != nil {
		list = append(list, a.Video)
	}
	if a.Modelling != nil {
		list = append(list, a.Modelling)
	}
	if a.Photogrammetry != nil {
		list = append(list, a.Photogrammetry)
	}
	if a.Photography != nil {
		list = append(list, a.Photography)
	}
	if a.Games != nil {
		list = append(list, a.Games)
	}
	if a.Software != nil {
		list = append(list, a.Software)
	}
	if a.Sound != nil {
		list = append(list, a.Sound)
	}
	if a.Statistics != nil {
		list = append(list, a.Statistics)
	}
	if a.LocalModels != nil {
		list = append(list, a.LocalModels)
	}
	if a.Drafting != nil {
		list = append(list, a.Drafting)
	}
	if a.Live != nil {
		list = append(list, a.Live)
	}
	if a.Guests != nil {
		list = append(list, a.Guests)
	}
	if a.Office != nil {
		list = append(list, a.Office)
	}
	if a.Server != nil {
		list = append(list, a.Server)
	}
	return list
}

// Name is what a person calls the activity, empty where no kind is given.
func (a *Activity) Name() string {
	for _, k := range a.given() {
		return k.name()
	}
	return ""
}

// Read reads a brief file.
func Read(file string, data []byte) (*Brief, error) {
	var b Brief
	if err := format.Read(file, data, Kind, Version, &b); err != nil {
		return nil, err
	}
	var errs []error
	for i := range b.Activities {
		if n := len(b.Activities[i].given()); n != 1 {
			errs = append(errs, &format.Error{File: file, Path: fmt.Sprintf("activities[%d]", i),
				Value: fmt.Sprintf("%d kinds of work", n), Want: "exactly one, such as \"video\" or \"games\""})
		}
	}
	if len(errs) > 0 {
		return nil, errors.Join(errs...)
	}
	return &b, nil
}
