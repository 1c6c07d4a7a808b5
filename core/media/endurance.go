package media

import "math"

// DaysPerYear is the year of the drive-writes-per-day arithmetic.
const DaysPerYear = 365

// Requirements of the JEDEC endurance classes: client 8 h a day, enterprise 24 h; retention without power at the end of
// the rated life, 365 days at 30 °C for client, 90 days (three months) at 40 °C for enterprise.
//
// Source: JESD218, as summed up by the committee's chair in the trade press.
const (
	ClientHoursPerDay       = 8
	EnterpriseHoursPerDay   = 24
	ClientRetentionDays     = 365
	EnterpriseRetentionDays = 90
)

// WrittenBytes is what a host writes in whole years at a daily volume: the need to hold against a drive's rated writes
// (TBW, in decimal terabytes).
func WrittenBytes(bytesPerDay, years int64) int64 {
	return bytesPerDay * DaysPerYear * years
}

// EnduranceDays is how many days a rating lasts at a daily volume, rounded down; ok is false for a volume not above zero.
func EnduranceDays(ratedBytes, bytesPerDay int64) (days int64, ok bool) {
	if bytesPerDay <= 0 {
		return 0, false
	}
	return ratedBytes / bytesPerDay, true
}

// DriveWritesPerDay is a rating as whole-drive writes a day over years: rated ÷ (capacity · 365 · years).
//
// Source: arithmetic; terabytes written after JESD218.
func DriveWritesPerDay(ratedBytes, capacityBytes, years int64) float64 {
	return float64(ratedBytes) / (float64(capacityBytes) * float64(DaysPerYear*years))
}

// RatedBytes is the rating that whole-drive writes a day over years amount to, in bytes rounded down. Writes a day are in
// thousandths.
func RatedBytes(writesPerDayMilli, capacityBytes, years int64) int64 {
	perYear := capacityBytes / 1000 * writesPerDayMilli * DaysPerYear
	perYear += capacityBytes % 1000 * writesPerDayMilli * DaysPerYear / 1000
	return perYear * years
}

// CleanReadChance is the chance of reading bytes without an unrecoverable error at one error per errorPerBits bits:
//
//	exp(−8 · bytes / errorPerBits)
//
// Source: Poisson model; 1e14 desktop and 1e15 network or enterprise disks are data-sheet habit.
func CleanReadChance(readBytes int64, errorPerBits float64) float64 {
	return math.Exp(-8 * float64(readBytes) / errorPerBits)
}
