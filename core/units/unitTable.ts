// Every unit spelling the program knows, one row a unit. Importers, axis labels, sheets and the JSON use the same rows.
// A new spelling is a word in a row; a new unit is a row, and a value in test/reference/units.test.ts.

/** What kind of thing a unit measures. Only units of one quantity convert into each other. */
export type Quantity =
  | 'voltage'
  | 'current'
  | 'temperature'
  | 'speed'
  | 'rotation'
  | 'massFlow'
  | 'pressure'
  | 'share'
  | 'airRatio'
  | 'time'
  | 'length'
  | 'angle'
  | 'resistance'
  | 'frequency'
  | 'acceleration'
  | 'power'
  | 'torque'
  | 'force'
  | 'volumeFlow'
  | 'mass'
  | 'count';

/**
 * One unit. A value v of it is (v - zero) * times / over in the base unit of its quantity; 'reciprocal' means 1 / v.
 * Two whole numbers instead of one factor, so that 855 mV is 0.855 V and 212 °F is 100 °C to the last bit.
 */
export interface UnitRow {
  /** The spelling the program itself writes. */
  readonly symbol: string;
  readonly quantity: Quantity;
  readonly times: number;
  readonly over: number;
  readonly zero: number;
  readonly form: 'linear' | 'reciprocal';
  /** Other spellings, in lower case and without blanks and dots, because they are compared that way. */
  readonly spellings: readonly string[];
}

/**
 * Mass of air for a mass of fuel at which petrol burns without remainder. Common practice, no source: 14.7 is what the
 * trade and most instruments use; petrol with 10 % ethanol lies near 14.1.
 */
export const AIR_FUEL_RATIO_AT_LAMBDA_1 = 14.7;

/**
 * Base units: V, A, °C, km/h, 1/min, g/s, kPa, %, 1 (lambda), s, m, °, Ω, Hz, m/s², W, N·m, L/h, g, 1. Factors are those
 * of NIST Special Publication 811 (2008), appendix B: mile, pound and foot exact, psi and inHg conventional.
 */
export const UNIT_TABLE: readonly UnitRow[] = [
  row('V', 'voltage', 1, 'volt volts vdc voltios voltio'),
  row('mV', 'voltage', [1, 1000], 'millivolt millivolts milivoltios milivolt'),
  row('µV', 'voltage', [1, 1e6], 'uv microvolt microvolts'),
  row('A', 'current', 1, 'amp amps ampere amperes amperios'),
  row('mA', 'current', [1, 1000], 'milliamp milliamps milliampere milliamperes miliamperios'),
  row('µA', 'current', [1, 1e6], 'ua microamp microamps microampere'),
  row(
    '°C',
    'temperature',
    1,
    'c degc degsc degreec degreesc celsius degreescelsius degreecelsius degcelsius gradcelsius gradc grad ºc ˚c ℃ centigrade degrécelsius degréc degréscelsius centigrados gradoscentigrados',
  ),
  row(
    '°F',
    'temperature',
    [5, 9],
    'f degf degsf degreef degreesf fahrenheit degreesfahrenheit degreefahrenheit degfahrenheit gradfahrenheit ºf ˚f ℉',
    32,
  ),
  row('K', 'temperature', 1, 'kelvin degk °k', 273.15),
  row(
    'km/h',
    'speed',
    1,
    'kmh kph kmph kilometreperhour kilometerperhour km/hr km/hour kmhr km/std kilometresperhour kilometersperhour',
  ),
  row('mph', 'speed', 1.609344, 'mi/h mileperhour miles/h miles/hour milesperhour mi/hr mileh'),
  row('kn', 'speed', 1.852, 'kt kts knot knots knoten noeud noeuds nudos'),
  row(
    'm/s',
    'speed',
    3.6,
    'mps m/sec meter/second meters/second metre/second metres/second meterpersecond metrepersecond metrespersecond meterspersecond ms⁻¹',
  ),
  row(
    '1/min',
    'rotation',
    1,
    'rpm r/min rev/min revs/min revmin u/min upm umdr/min min-1 min⁻¹ min^-1 /min tr/min trs/min tours/min trmin trmn tr/mn giri/min giri rev/m 1/minute revolutionperminute revolutionsperminute revoluciones/min umin rev/minute rmin ot/min obr/min',
  ),
  row('1/s', 'rotation', 60, 'rps rev/s r/s u/s tr/s'),
  row('rad/s', 'rotation', [60, 2 * Math.PI], 'rad/sec radian/s radians/s radianpersecond radianspersecond'),
  row(
    'g/s',
    'massFlow',
    1,
    'gs g/sec gps gm/s gm/sec gr/s gr/sec grams/s grams/sec grampersecond gramspersecond gram/second grams/second gram/s gram/sec',
  ),
  row('kg/h', 'massFlow', [1000, 3600], 'kgh kg/hr kg/hour kghr kg/std kilogramsperhour'),
  row('lb/min', 'massFlow', [453.59237, 60], 'lbm/min lbs/min lbmin lb/m pounds/min lb/minute'),
  row('lb/h', 'massFlow', [453.59237, 3600], 'lb/hr lbs/h lbs/hr pph'),
  row('g/min', 'massFlow', [1, 60], 'gmin gr/min gm/min grams/min gram/min'),
  row('mg/s', 'massFlow', [1, 1000], 'mg/sec'),
  row('kPa', 'pressure', 1, 'kilopascal kilopascals kpaa kpag kpaabs kpa(abs)'),
  row('Pa', 'pressure', [1, 1000], 'pascal pascals'),
  row('hPa', 'pressure', [1, 10], 'hectopascal'),
  row('MPa', 'pressure', 1000, 'megapascal'),
  row('bar', 'pressure', 100, 'bars bara barg'),
  row('mbar', 'pressure', [1, 10], 'millibar mbars'),
  row('psi', 'pressure', 6.894757293168361, 'psig psia lb/in2 lbf/in² lb/in² psi(abs)'),
  row('inHg', 'pressure', 3.386389, 'inchhg incheshg "hg inhgabs'),
  row('mmHg', 'pressure', 0.133322387415, 'torr'),
  row('inH2O', 'pressure', 0.2490889, 'inchh2o "h2o'),
  row('%', 'share', 1, 'percent pct prozent pourcent porcentaje %age percentage vol% porciento percentuale'),
  row('‰', 'share', [1, 10], 'permille'),
  row('parts of 1', 'share', 100, 'fraction fractional perunit'),
  // A trim that multiplies: 1.03 is 3 %. No spelling: the word stands in many names.
  row('factors about 1', 'share', 100, '', 1),
  row('λ', 'airRatio', 1, 'lambda la eqratio equivalenceratio eqrat lambdaratio airratio'),
  row('AFR', 'airRatio', [1, AIR_FUEL_RATIO_AT_LAMBDA_1], 'a/f air/fuel af airfuelratio air/fuelratio a/fratio :1 a:f'),
  { symbol: 'φ', quantity: 'airRatio', times: 1, over: 1, zero: 0, form: 'reciprocal', spellings: ['phi', 'ϕ'] },
  row('s', 'time', 1, 'sec secs second seconds sek sekunden sekunde secondes seconde seg segundos segundo secondi'),
  row(
    'ms',
    'time',
    [1, 1000],
    'msec msecs millis millisec millisecond milliseconds millisekunden millisecondes milisegundos msek',
  ),
  row('µs', 'time', [1, 1e6], 'us usec microsec microsecond microseconds mikrosekunden microsecondes'),
  row('ns', 'time', [1, 1e9], 'nsec nanosecond nanoseconds nanos'),
  row('min', 'time', 60, 'minute minutes minuten mins minutos'),
  row('h', 'time', 3600, 'hr hrs hour hours std stunden heures horas'),
  row('d', 'time', 86400, 'day days tage jours dias días'),
  row('km', 'length', 1000, 'kilometre kilometer kilometers kms'),
  row('mi', 'length', 1609.344, 'mile miles'),
  row('m', 'length', 1, 'meter metre meters metres'),
  row('cm', 'length', [1, 100], ''),
  row('mm', 'length', [1, 1000], ''),
  row('ft', 'length', 0.3048, 'feet foot'),
  row(
    '°',
    'angle',
    1,
    'deg degs degree degrees °ca °ka °kw °vil degbtdc °btdc degca °crk °cam º grados degrés degrébtdc',
  ),
  row('Ω', 'resistance', 1, 'ohm ohms ω'),
  row('kΩ', 'resistance', 1000, 'kohm kohms kω'),
  row('Hz', 'frequency', 1, 'hertz samples/s sps s/s sa/s 1/sec'),
  row('kHz', 'frequency', 1000, 'kilohertz ksps ks/s ksa/s'),
  row('MHz', 'frequency', 1e6, 'megahertz'),
  row('m/s²', 'acceleration', 1, 'm/s2 m/s^2 m/sec²'),
  row('g₀', 'acceleration', 9.80665, 'gee gforce'),
  row('kW', 'power', 1000, 'kilowatt'),
  row('W', 'power', 1, 'watt watts'),
  row('hp', 'power', 745.6999, 'bhp whp'),
  row('N·m', 'torque', 1, 'nm n*m n-m newtonmeter'),
  row('lbf·ft', 'torque', 1.355818, 'lb-ft ft-lb ft·lb lbft ftlb ft*lb ft-lbs lb*ft ft/lb'),
  row('N', 'force', 1, 'newton newtons'),
  row('kN', 'force', 1000, 'kilonewton'),
  row('lbf', 'force', 4.448222, ''),
  row('L/h', 'volumeFlow', 1, 'l/hr lph litres/h liter/h liters/hour'),
  row('L/s', 'volumeFlow', 3600, 'l/sec litre/s liter/s litres/s liters/s'),
  row('L/min', 'volumeFlow', 60, 'lpm litre/min liter/min litres/min liters/min'),
  row('m³/h', 'volumeFlow', 1000, 'm3/h m^3/h m3/hr cbm/h'),
  row('gal/h', 'volumeFlow', 3.785411784, 'gph gal/hr gal/hour gal(us)/h'),
  row('cc/min', 'volumeFlow', [6, 100], 'cm3/min cm³/min ml/min ccm/min'),
  row('g', 'mass', 1, 'gram grams gramm g/cyl g/rev g/stroke g/str g/hub'),
  row('mg', 'mass', [1, 1000], 'mg/stroke mg/hub mg/str mgperstroke mg/stk mg/cp'),
  row('kg', 'mass', 1000, ''),
  row('lb', 'mass', 453.59237, 'lbs pound pounds'),
  row(
    '1',
    'count',
    1,
    '- -- — – count counts cnt nounit none unitless dimensionless ratio bit bits bool boolean state status enum raw hex text n/a na # on/off n',
  ),
];

function row(
  symbol: string,
  quantity: Quantity,
  factor: number | readonly [times: number, over: number],
  spellings: string,
  zero = 0,
): UnitRow {
  const [times, over] = typeof factor === 'number' ? [factor, 1] : factor;
  return { symbol, quantity, times, over, zero, form: 'linear', spellings: spellings.split(' ').filter(Boolean) };
}
