package unit

import (
	"fmt"
	"math/big"
	"regexp"
	"strconv"
	"strings"
)

// signs are the money signs a price may carry. A dollar sign goes with any
// dollar currency.
var signs = map[string]string{"$": "USD", "£": "GBP", "€": "EUR"}

// wholeOnly are currencies without minor units in use (ISO 4217 exponent 0).
var wholeOnly = map[string]bool{"JPY": true, "KRW": true, "ISK": true, "CLP": true, "VND": true}

var currencyCode = regexp.MustCompile(`(?i)^([A-Z]{3}) ?|([A-Z]{3})$`)

// MaxMinor is the largest sum read, in minor units: a million of a currency.
const MaxMinor = 100_000_000

// groupedSum is a sum with thousands set apart and coins at the end, which can
// be read in one way only: "1,234.50", "1.234,50", "1 234,50".
var groupedSum = regexp.MustCompile(`^[1-9]\d{0,2}(?:(?:,\d{3})+\.|(?:\.\d{3})+,|(?: \d{3})+[.,])\d\d$`)

// ParseMoney reads a sum: "9", "9.50", "$9.50", "£4", "8 EUR", "$1,234.50". The currency is
// the kitchen's, used where the text names none.
func ParseMoney(s, currency string) (Money, error) {
	const hint = "write a sum like 9, 9.50 or 9.50 USD"
	text, err := clean(s)
	if err != nil {
		return Money{}, fail(hint, "the sum is empty or unreadable")
	}
	m := Money{Currency: currency}
	number := text
	for sign, code := range signs {
		if strings.Contains(text, sign) {
			number = strings.TrimSpace(strings.Replace(text, sign, "", 1))
			if sign != "$" || !dollars(currency) {
				m.Currency = code
			}
		}
	}
	if code := strings.TrimSpace(currencyCode.FindString(number)); code != "" {
		number = strings.TrimSpace(currencyCode.ReplaceAllString(number, ""))
		m.Currency = strings.ToUpper(code)
	}
	if groupedSum.MatchString(number) {
		coins := len(number) - 3
		number = strings.NewReplacer(",", "", ".", "", " ", "").Replace(number[:coins]) + "." + number[coins+1:]
	}
	v, rest, err := scanNumber(number)
	if err != nil || strings.ContainsAny(number, "/") {
		if pe, ok := err.(*ParseError); ok && strings.Contains(pe.Msg, "may mean") {
			return Money{}, err
		}
		return Money{}, fail(hint, "%s is not a sum of money", quote(s))
	}
	if rest != "" {
		return Money{}, fail(hint, "%s has %s after the number", quote(s), quote(rest))
	}
	return m.amount(v, s)
}

func dollars(currency string) bool {
	switch currency {
	case "USD", "CAD", "AUD", "NZD", "SGD", "HKD":
		return true
	}
	return false
}

func (m Money) amount(v *big.Rat, s string) (Money, error) {
	v.Mul(v, new(big.Rat).SetInt64(int64(m.PerUnit())))
	if !v.IsInt() {
		return Money{}, fail("round it to the smallest coin", "%s has a part of a coin", quote(s))
	}
	if n, ok := scaled(v, 1); ok && n <= MaxMinor {
		m.Minor = n
		return m, nil
	}
	return Money{}, fail("check the number", "%s is too much money", quote(s))
}

// PerUnit is how many minor units one whole unit of the currency has.
func (m Money) PerUnit() int {
	if wholeOnly[m.Currency] {
		return 1
	}
	return 100
}

// Sign is the currency's sign, "$", "£", "€", else its code; empty without one.
func (m Money) Sign() string {
	for s, code := range signs {
		if code == m.Currency {
			return s
		}
	}
	return m.Currency
}

// Number is the sum without its sign, with a language's decimal sign and what
// stands between thousands: "1,234.50"; for a spreadsheet Number(".", "").
func (m Money) Number(decimal, thousands string) string {
	minus, n := "", uint64(m.Minor)
	if m.Minor < 0 {
		minus, n = "-", -n
	}
	coins := ""
	if !wholeOnly[m.Currency] {
		coins = fmt.Sprintf("%s%02d", decimal, n%100)
		n /= 100
	}
	whole := strconv.FormatUint(n, 10)
	for at := len(whole) - 3; at > 0; at -= 3 {
		whole = whole[:at] + thousands + whole[at:]
	}
	return minus + whole + coins
}

// String gives "$9.50", "£4.00", "€1,200.00" or "CHF 8.00", as English writes it.
func (m Money) String() string { return m.signed(",") }

// Plain is String without a sign between thousands: ParseMoney reads it back,
// and so does a spreadsheet.
func (m Money) Plain() string { return m.signed("") }

func (m Money) signed(thousands string) string {
	sign := m.Sign()
	if sign != "" && sign == m.Currency {
		sign += " "
	}
	number, minus := strings.CutPrefix(m.Number(".", thousands), "-")
	if minus {
		sign = "-" + sign
	}
	return sign + number
}
