package reading

// Rules are what a meter's card goes by.
type Rules struct {
	PHDays       int // from one calibration of a pH meter to the next
	ECDays       int // from one check of an EC meter to the next
	BottleMonths int // how long an opened bottle keeps, or as printed on it
}

// MeterRules are the rules that Passport checks by.
func MeterRules() Rules {
	return Rules{
		PHDays: int(Facts.Get(factPhCalibrateDays).Value), ECDays: int(Facts.Get(factEcCheckDays).Value),
		BottleMonths: int(Facts.Get(factPhBufferOpenMonths).Value),
	}
}
