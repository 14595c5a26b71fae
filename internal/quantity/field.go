package quantity

// Field is one kind of input that a user types.
type Field int

// The fields. The zero Field is for names.
const (
	FieldSize Field = iota + 1
	FieldWire
	FieldGap
	FieldStickOut
	FieldLength
	FieldFeed
	FieldTravel
	FieldCurrent
	FieldVoltage
	FieldTemperature
	FieldPreheat
	FieldFlow
	FieldForce
	FieldDuration
	FieldPrice
	FieldGasPrice
	FieldRate
	FieldPercent
	FieldOffset
	FieldMass
	FieldPerLength
	FieldNumber
	FieldCount
	FieldMark // of a dial; a trim dial has marks below its middle
	fields
)

type spec struct {
	what      string // in messages
	units     []unit
	bare      bare
	low, high float64 // the accepted range in the base unit, ends included
	shown     string  // the unit in which messages name the range, "" for none
	signed    bool    // negative numbers are allowed
	whole     bool    // only whole numbers are
	hint      string  // what may be typed
	rule      string  // how a number without a unit is read
}

// bare is how a number without a unit is read: in one unit below a limit, in another from the limit up. A fraction
// without a unit has a unit of its own, because only inches are written as fractions.
type bare struct {
	limit       float64
	under, from string
	fraction    string // "" if a fraction is refused
}

// specs is pure data, so that it costs no time when the program starts.
var specs = [fields]spec{
	FieldSize: {what: "a thickness", units: lengths, bare: bare{0.25, "in", "mm", "in"}, low: 0.05, high: 150,
		shown: "mm", hint: "type 16ga, .060 or 1.5mm",
		rule: "a whole number from 7 to 30 is a gauge, under 0.25 inches, else mm"},
	FieldWire: {what: "a wire size", units: lengths, bare: bare{0.25, "in", "mm", "in"}, low: 0.4, high: 2.4,
		shown: "mm", hint: "type .035, 1/16 or 0.9mm", rule: "a bare number under 0.25 is inches, else mm"},
	FieldGap: {what: "a gap", units: lengths, bare: bare{0.25, "in", "mm", "in"}, low: 0, high: 25, shown: "mm",
		hint: "type 0, 1.5mm or 1/16in", rule: "a bare number under 0.25 is inches, else mm"},
	FieldStickOut: {what: "a stick-out", units: lengths, bare: bare{2, "in", "mm", "in"}, low: 3, high: 50, shown: "mm",
		hint: "type 12mm or 1/2in", rule: "a bare number under 2 is inches, else mm"},
	FieldLength: {what: "a length", units: lengths, bare: bare{from: "mm", fraction: "in"}, low: 0, high: 1e5,
		shown: "m", hint: "type 300mm, 12in or 1.5m", rule: "a bare number is mm, a fraction inches"},
	FieldOffset: {what: "an offset", units: lengths, bare: bare{from: "mm", fraction: "in"}, low: -10, high: 10,
		shown: "mm", signed: true,
		hint: "type 0.5mm, -1/32in or 0", rule: "a bare number is mm, a fraction inches; minus is the other way"},
	FieldFeed: {what: "a wire feed", units: speeds, bare: bare{30, "m/min", "in/min", ""}, low: 5, high: 2000.0 / 3,
		shown: "m/min",
		hint:  "type 250ipm or 6.3m/min", rule: "a bare number from 30 up is in/min, under 30 m/min"},
	FieldTravel: {what: "a travel", units: speeds, bare: bare{from: "mm/s"}, low: 0.3, high: 60, shown: "mm/s",
		hint: "type 6, 6mm/s, 14ipm or 16s/100mm", rule: "a bare number is mm/s; 16s/100mm counts seconds"},
	FieldCurrent: {what: "a current", units: amps, bare: bare{from: "a"}, low: 5, high: 600, shown: "a",
		hint: "type 93 or 93A", rule: "a bare number is amps"},
	FieldVoltage: {what: "a voltage", units: volts, bare: bare{from: "v"}, low: 5, high: 60, shown: "v",
		hint: "type 14.8 or 14.8V", rule: "a bare number is volts"},
	FieldTemperature: {what: "a temperature", units: temperatures, bare: bare{from: "c"}, low: -40, high: 1500,
		shown: "c", signed: true,
		hint: "type 95C or 200F", rule: "a bare number is °C"},
	FieldPreheat: {what: "a preheat", units: temperatures, bare: bare{from: "c"}, low: -40, high: 700,
		shown: "c", signed: true,
		hint: "type 95C or 200F", rule: "a bare number is °C"},
	FieldFlow: {what: "a gas flow", units: flows, bare: bare{from: "l/min"}, low: 1, high: 60, shown: "l/min",
		hint: "type 12L/min or 25cfh", rule: "a bare number is L/min"},
	FieldForce: {what: "a load", units: forces, bare: bare{from: "kn"}, low: 0, high: 10000, shown: "kn",
		hint: "type 5kN, 500lbf or 200kg", rule: "a bare number is kN"},
	FieldDuration: {what: "a time", units: durations, bare: bare{from: "s"}, low: 0, high: 1e6, shown: "s",
		hint: "type 0.4s or 400ms", rule: "a bare number is seconds"},
	FieldPrice: {what: "a price", units: prices, bare: bare{from: "/kg"}, low: 0, high: 1e6, shown: "/kg",
		hint: "type $12/lb or 25 EUR/kg", rule: "a bare number is per kg"},
	FieldGasPrice: {what: "a price of gas", units: gasPrices, bare: bare{from: "/m3"}, low: 0, high: 1e6,
		shown: "/m3", hint: "type 8 EUR/m3 or $0.25/ft3", rule: "a bare number is per m3"},
	FieldRate: {what: "a rate", units: rates, bare: bare{from: "/h"}, low: 0, high: 1e6, shown: "/h",
		hint: "type 45 EUR/h or $45", rule: "a bare number is per hour"},
	FieldPercent: {what: "a percentage", units: percents, bare: bare{from: "%"}, low: 0, high: 100, shown: "%",
		hint: "type 40 or 40%", rule: "a bare number is per cent"},
	FieldMass: {what: "a mass", units: masses, bare: bare{from: "kg"}, low: 0, high: 1e5, shown: "kg",
		hint: "type 2kg, 500g or 5lb", rule: "a bare number is kg"},
	FieldPerLength: {what: "a time per length", units: perLengths, bare: bare{from: "min/m"}, low: 0, high: 1000,
		shown: "min/m", hint: "type 3min/m, 1min/ft or 3", rule: "a bare number is minutes a metre"},
	FieldNumber: {what: "a number", low: 0, high: 1e9, hint: "type 12 or 1.5", rule: "a number without a unit"},
	FieldCount:  {what: "a number of pieces", low: 0, high: 1e9, whole: true, hint: "type 12", rule: "a whole number"},
	FieldMark: {what: "a number", low: -1e9, high: 1e9, signed: true, hint: "type 12 or 1.5",
		rule: "a number without a unit"},
}

// Rule says in one short line how the field reads a number without a unit; "" for a field of names.
func Rule(f Field) string { return specs[f].rule }
