package plan

import (
	"encoding/binary"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/predict"
	"slipfit/core/rule"
)

// Index is a stock laid out for the planner: every way to fill each seat, sorted by what each rule can see of it, and what
// rules have said of them so far. Problems posed to one Index share what it remembers, so a question that differs from an
// earlier one in a choice or a need asks the rules only what is new. It serves one goroutine at a time.
type Index struct {
	stock      *part.Stock
	shelves    map[string]*shelf   // by seat, how many pieces are thought of, and whose are liked
	lasting    map[string]*memory  // of rules that read no needs
	passing    map[string]*hearing // of rules that read some, by what those say
	couples    map[string]*couple  // what rules quick to ask have said of two columns
	acquainted int                 // how many bytes that is
	opened     []*opened           // what was found of the options of problems, last at the end
	answered   []*answered         // what was proven of problems, last at the end
	found      []finding           // choices that stood, those found last at the end
	fields     map[string]drawing  // of the needs
	key        []byte              // room to write keys in
	keys       []uint64            // room to sort in
	sorter     sorter
	made       int   // how many memories there have been
	turn       int64 // how often passing was looked into
	checks     int64 // how often a rule was asked
}

// hearing is what rules have said under one saying of the needs.
type hearing struct {
	memories map[string]*memory
	learnt   map[string]*learnt
	last     int64 // when it was last asked
}

// remembered is how many different sayings of the needs an Index remembers the rules' answers to.
const remembered = 512

// NewIndex lays out a stock, which must not change afterwards.
func NewIndex(stock *part.Stock) *Index {
	return &Index{stock: stock, shelves: map[string]*shelf{}, lasting: map[string]*memory{}, passing: map[string]*hearing{}, couples: map[string]*couple{}, fields: map[string]drawing{}}
}

// Stock is the stock that is laid out.
func (x *Index) Stock() *part.Stock { return x.stock }

// shelf is the ways to fill one seat, in tie order, which is by id, number, layout, plate and face with the empty seat
// first. An option is known by its place in the list.
type shelf struct {
	key      string // no other shelf of its Index has it
	sorter   *sorter
	seat     build.Seat
	turn     int // of the seat in sequence
	options  []build.Option
	price    []int64  // minor units
	rising   []int32  // options in order of price, the cheapest first
	first    []int    // by option: the first option of the same part
	each     *classes // every option apart
	none     *classes // none apart
	kinds    *classes // by the kind of part
	byRule   map[string]*classes
	byLook   map[string]*classes // by the aspects that were looked at
	strains  map[string]*strain  // by rule; nil of one that says nothing of them
	aspects  []*aspect           // what any rule sees of the options; nil until it is asked for
	numbered int                 // how many aspects there are, and lesser ones
	paired   map[[2]*classes]*classes
	feeds    *feeds    // of supplies
	byAir    *fedByAir // the same by how much they blow
	fans     *predict.AnyFans
}

// shelf lists the ways to fill a seat with so many pieces, whatever a problem admits of them.
func (x *Index) shelf(s build.Seat, counts []int, likes []string) *shelf {
	at := append(x.key[:0], byte(s), byte(len(counts)))
	for _, n := range counts {
		at = binary.AppendVarint(at, int64(n))
	}
	for _, maker := range likes {
		at = strconv.AppendQuote(at, maker)
	}
	x.key = at
	if found := x.shelves[string(at)]; found != nil {
		return found
	}
	list := &shelf{key: strconv.Itoa(len(x.shelves)), seat: s, turn: slices.Index(sequence[:], s), sorter: &x.sorter, options: offer(x.stock, s, counts), byRule: map[string]*classes{}, byLook: map[string]*classes{}, strains: map[string]*strain{}, paired: map[[2]*classes]*classes{}}
	slices.SortFunc(list.options, before(likes))
	n := len(list.options)
	list.price, list.rising, list.first = make([]int64, n), make([]int32, n), make([]int, n)
	for i, o := range list.options {
		list.price[i], list.rising[i], list.first[i] = int64(o.Price()), int32(i), i
		if i > 0 && o.Part == list.options[i-1].Part {
			list.first[i] = list.first[i-1]
		}
	}
	x.order(list.rising, list.price)
	x.shelves[string(at)] = list
	return list
}

// memory is what a query has found so far under what a problem says: shared by all problems that say the same of what
// its rule reads.
func (x *Index) memory(p *Problem, q *query, by []*classes) *memory {
	key := append(x.key[:0], q.rule.ID...)
	if q.early != nil {
		key = fmt.Append(key, " early ", q.nth, q.besides)
	}
	return x.recall(p, q.rule, p.settledFor(key, q), func() *memory { return newMemory(by, q.value) })
}

// placed is what was found of Places of an early query.
func (x *Index) placed(p *Problem, q *query, by []*classes) *memory {
	key := fmt.Append(append(x.key[:0], q.rule.ID...), " placed ", q.nth)
	return x.recall(p, q.rule, p.settledFor(key, q), func() *memory { return newMemory(by, true) })
}

// settledFor writes down what is settled of the seats that a query's rule reads, and its columns.
func (p *Problem) settledFor(key []byte, q *query) []byte {
	if p.base.Owned != 0 {
		key = fmt.Append(key, " owned ", p.base.Owned)
	}
	for _, s := range q.rule.Reads {
		if p.colOf[s] < 0 {
			key = append(key, p.settledIn(s)...)
		}
	}
	for _, c := range q.cols {
		key = append(append(key, ' '), p.cols[c].key...)
	}
	return key
}

// recall finds a memory of a rule by its key, or makes a new one.
func (x *Index) recall(p *Problem, r *rule.Rule, key []byte, blank func() *memory) *memory {
	x.key = key
	memories := x.lasting
	if h := p.hearing(r); h != nil {
		memories = h.memories
	}
	m := memories[string(key)]
	if m == nil {
		m = blank()
		x.made++
		m.id = x.made
		memories[string(key)] = m
	}
	return m
}

// hearing is what is remembered under what the needs say to a rule; nil of one that reads none.
func (p *Problem) hearing(r *rule.Rule) *hearing {
	h, known := p.heard[r]
	if !known {
		if t, judged := traits[r.ID]; !judged || len(t.needs) > 0 {
			h = p.index.heard(p.says(nil, &t, judged))
		}
		p.heard[r] = h
	}
	return h
}

// settledIn writes down what fills a seat that is no column.
func (p *Problem) settledIn(s build.Seat) string {
	switch s {
	case build.Fans:
		return written(p.base.Fans, func(f build.FanSet) string { return fmt.Sprint(f.Fan.ID, f.Count, f.Face) })
	case build.Cards:
		return written(p.base.Cards, func(c build.CardSet) string { return fmt.Sprint(c.Card.ID, c.Count) })
	case build.Screens:
		return written(p.base.Screens, func(m build.ScreenSet) string { return fmt.Sprint(m.Monitor.ID, m.Count) })
	}
	return "" // empty, or labour, which is the same for every problem
}

func written[S any](sets []S, one func(S) string) string {
	var b strings.Builder
	for _, s := range sets {
		b.WriteByte(' ')
		b.WriteString(one(s))
	}
	return b.String()
}

// heard is what is remembered under a saying of the needs. When too many are, those not heard for longest are forgotten.
func (x *Index) heard(saying []byte) *hearing {
	x.turn++
	h := x.passing[string(saying)]
	if h == nil {
		if len(x.passing) == remembered {
			x.forget()
		}
		h = &hearing{memories: map[string]*memory{}, learnt: map[string]*learnt{}}
		x.passing[string(saying)] = h
	}
	h.last = x.turn
	return h
}

// forget drops the half of the sayings that was not heard for longest.
func (x *Index) forget() {
	var when []int64
	for _, h := range x.passing {
		when = append(when, h.last)
	}
	slices.Sort(when)
	maps.DeleteFunc(x.passing, func(_ string, h *hearing) bool { return h.last < when[len(when)/2] })
}

// says writes down what the needs say in the fields that a rule can read, or in all. Of resources, those that the rule names.
func (p *Problem) says(b []byte, t *trait, some bool) []byte {
	if !some {
		return fmt.Appendf(b, "%+v", *p.ask.Needs)
	}
	for _, f := range t.needs {
		if f == "Needs.By" && t.resources != nil {
			for _, r := range t.resources {
				need := &p.ask.Needs.By[r]
				b = binary.AppendVarint(binary.AppendVarint(binary.AppendVarint(b, need.Floor), need.Enough), int64(need.Weight))
			}
			continue
		}
		said, ok := p.said[f]
		if !ok {
			said = p.field(f)
			p.said[f] = said
		}
		b = append(b, said...)
	}
	return b
}

// field writes down one field of the needs, of the place or of the wishes.
func (p *Problem) field(full string) string {
	owner, name, _ := strings.Cut(full, ".")
	v := reflect.ValueOf(p.ask.Needs).Elem()
	if owner != "Needs" {
		v = v.FieldByName(owner)
	}
	v = v.FieldByName(name)
	d := p.index.fields[full]
	if d == nil {
		d = draw(v.Type(), nil, nil)
		p.index.fields[full] = d
	}
	return string(d([]byte(full), v))
}

// Problem poses an ask to the stock. It fails where the ask names parts that the stock does not have.
func (x *Index) Problem(ask Ask) (*Problem, error) {
	return x.problem(ask, rule.All)
}

// New makes a problem ready on a stock laid out for it alone.
func New(stock *part.Stock, ask Ask) (*Problem, error) {
	return NewIndex(stock).Problem(ask)
}
