package theme

import (
	"fmt"
	"time"

	"slipbook/generator/course"
)

// duration says a time in words: "about 20 minutes", "about 1 hour 30
// minutes", whole days as days.
func (w words) duration(d course.Duration) (string, error) {
	const hour, day = 60, 24 * 60
	switch {
	case d >= 2*day && d%day == 0:
		return w.say("time-days", int(d/day))
	case d == 1:
		return w.say("time-minute")
	case d < hour:
		return w.say("time-minutes", int(d))
	case d == hour:
		return w.say("time-hour")
	case d%hour == 0:
		return w.say("time-hours", int(d/hour))
	case d < 2*hour:
		return w.say("time-hour-minutes", int(d%hour))
	}
	return w.say("time-hours-minutes", int(d/hour), int(d%hour))
}

// isoDuration writes a time as HTML's time element wants it, "PT20M".
func isoDuration(d course.Duration) string { return fmt.Sprintf("PT%dM", int(d)) }

// months are the keys of the months' names.
var months = [...]string{
	"month-january", "month-february", "month-march", "month-april", "month-may", "month-june",
	"month-july", "month-august", "month-september", "month-october", "month-november", "month-december",
}

// date says an ISO 8601 date in words: "24 November 2026", a month as
// "November 2026". What is neither, a bare year for one, stays as it is.
func (w words) date(iso string) (string, error) {
	if t, err := time.Parse("2006-01-02", iso); err == nil {
		month, err := w.say(months[t.Month()-1])
		if err != nil {
			return "", err
		}
		return w.say("date-day", t.Day(), month, t.Year())
	}
	if t, err := time.Parse("2006-01", iso); err == nil {
		month, err := w.say(months[t.Month()-1])
		if err != nil {
			return "", err
		}
		return w.say("date-month", month, t.Year())
	}
	return iso, nil
}

// verdictWords are the keys of the words that pages say for the verdicts.
var verdictWords = map[course.Verdict]string{
	course.Yes:   "verdict-yes",
	course.Label: "verdict-label",
	course.Risky: "verdict-risky",
	course.Never: "verdict-never",
}

// verdict says a verdict in a word.
func (w words) verdict(v course.Verdict) (string, error) { return w.say(verdictWords[v]) }
