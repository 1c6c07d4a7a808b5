package unit

import "strings"

// Amounts of money are asked for and refused in whole units of the currency, while files hold minor ones. Both are decimals in
// text, so that none is rounded on its way.

// InMinor reports a field, or a path that ends with one, that holds money in minor units.
func InMinor(field string) bool { return strings.HasSuffix(field, "_minor") }

// MajorOf writes minor units as whole units with two decimals, dropped where they are nought: "260000" is "2600". What is no
// amount is left as it is.
func MajorOf(minor string) string {
	if minor == "" || strings.Trim(minor, "0123456789") != "" {
		return minor
	}
	for len(minor) < 3 {
		minor = "0" + minor
	}
	whole, rest := minor[:len(minor)-2], minor[len(minor)-2:]
	if rest == "00" {
		return whole
	}
	return whole + "." + rest
}

// MinorOf is MajorOf the other way about; spaces between thousands are dropped, and a comma may stand for the point. It reports
// false of what is no amount.
func MinorOf(major string) (minor string, ok bool) {
	typed := strings.NewReplacer(" ", "", "\u00a0", "", "\u202f", "", ",", ".").Replace(strings.TrimSpace(major))
	whole, rest, _ := strings.Cut(typed, ".")
	if whole == "" || len(rest) > 2 || strings.Trim(whole+rest, "0123456789") != "" {
		return "", false
	}
	minor = strings.TrimLeft(whole+(rest + "00")[:2], "0")
	if minor == "" {
		minor = "0"
	}
	return minor, true
}

// WantedInMajor tells in whole units of the currency what amount a file should hold in minor ones.
func WantedInMajor(want, currency string) string {
	words := strings.Fields(strings.Replace(want, "a whole number of minor units", "an amount in "+currency, 1))
	for i, word := range words {
		words[i] = MajorOf(word)
	}
	return strings.Join(words, " ")
}
