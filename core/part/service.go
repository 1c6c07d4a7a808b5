package part

import "slipfit/core/unit"

// Service is labour or a sundry that a quote carries: assembly, burn-in, paste, ties.
type Service struct {
	Article
	Use     ServiceUse                 `json:"use" doc:"What it is for."`
	Minutes unit.Figure[unit.Duration] `json:"time_min,omitzero" range:"0..2000" doc:"Bench time."`
}

// ServiceUse is what a service or sundry is for.
type ServiceUse string

// Uses of services and sundries.
const (
	UseAssembly ServiceUse = "assembly"
	UseTest     ServiceUse = "test"
	UseSetup    ServiceUse = "setup"
	UseSundry   ServiceUse = "sundry"
	UseCarriage ServiceUse = "carriage"
)

// Values lists the accepted words.
func (ServiceUse) Values() []string {
	return []string{"assembly", "test", "setup", "sundry", "carriage"}
}
