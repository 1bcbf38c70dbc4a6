package unit

import "strings"

// Nitrogen is counted in three accounts that must not be added up: what is put on (fed), what the trees hold of it
// (taken up), and what lies in the soil (present). An account word is at the end of a unit: lb N/ac fed. One
// account becomes another only through a share that has both in its own unit: 70 % taken up/fed.

// takenUpWord is the one account that is written in two words.
const takenUpWord = "taken up"

// accountWords are the accounts as they are written and said.
var accountWords = map[base]string{fed: "fed", takenUp: takenUpWord, present: "present"}

// accounts says in words which accounts are above and below the line.
func (d Dimension) accounts() []string {
	var above, below []string
	for b := firstAccount; b < bases; b++ {
		power := d.powers[b]
		switch {
		case power > 0:
			above = append(above, accountWords[b]+raised(power))
		case power < 0:
			below = append(below, accountWords[b]+raised(-power))
		}
	}
	if len(below) > 0 {
		above = append(above, "of what is "+strings.Join(below, " and "))
	}
	return above
}

// onlyAccountsDiffer says whether d and e are of the same measures and substances.
func (d Dimension) onlyAccountsDiffer(e Dimension) bool {
	return [firstAccount]int16(d.powers[:firstAccount]) == [firstAccount]int16(e.powers[:firstAccount])
}

// Uncounted gives the dimension without its accounts.
func (d Dimension) Uncounted() Dimension {
	clear(d.powers[firstAccount:])
	return d
}

// account is the one account of d, above the line. False when d has none, or more than that.
func (d Dimension) account() (base, bool) {
	var found base
	var count int
	for b := firstAccount; b < bases; b++ {
		if d.powers[b] != 0 {
			found, count = b, count+1
		}
	}
	return found, count == 1 && d.powers[found] == 1
}

// Account is the word of the one account that u is in: "fed", "taken up" or "present"; "" when it tells none.
func (u Unit) Account() string {
	b, one := u.dimension.account()
	if !one {
		return ""
	}
	return accountWords[b]
}

// InAccount gives the same unit with an account at its end. It panics when the word is no account, and gives false
// when u tells one already.
func (u Unit) InAccount(account string) (Unit, bool) {
	if s, ok := spellings[account]; !ok || s.symbol.kind != accountKind {
		panic("unit: " + account + " is no account")
	}
	for b := firstAccount; b < bases; b++ {
		if u.dimension.powers[b] != 0 {
			return u, false
		}
	}
	return u.Times(MustParse(account)), true
}

// accountStep says how to come from one account to another.
func accountStep(have, want Dimension) string {
	from, told := have.account()
	to, asked := want.account()
	switch {
	case !told || !asked:
		return ""
	case from == takenUp && to == fed:
		return "divide it by the share of what is fed that the trees take up first"
	case from == fed && to == takenUp:
		return "multiply it by the share of what is fed that the trees take up first"
	case from == present:
		return "count what is in the soil as a credit instead"
	}
	return "no share makes one of the other"
}

// otherAccount is the sentence for the right measure and substance in another account.
func (m *Mismatch) otherAccount() string {
	from, to := m.Unit.Account(), m.Wanted.Account()
	switch step := accountStep(m.Unit.dimension, m.Wanted.dimension); {
	case to == "" && m.Wanted.dimension.accounts() != nil, from == "" && to == "":
		return m.Given + " is " + m.Unit.describe() + "; this needs " + m.Wanted.describe() + " (" + m.Wanted.String() + ")"
	case from == "":
		return m.Given + " does not say that it is " + to + "; this needs " + m.Wanted.Name()
	case to == "":
		return m.Given + " is " + from + "; this needs " + m.Wanted.Name() + " with no account named"
	default:
		return m.Given + " is " + from + "; this needs " + to + " (" + m.Wanted.String() + "): " + step
	}
}
