import type { Vocabulary } from './concepts.ts';

/** English words of the trade, with the abbreviations that instruments of every country write. */
export const ENGLISH: Vocabulary = {
  oxygenSensor:
    'o2|o2s|o2s*|o2v*|ho2s*|h2os*|heated o2|o2b*|o2 *|oxygen|oxy|oxygensensor|a f sensor|af sensor|afs|afs[0-9]*|hego*|ego|egos|ego[0-9]*|uego*|lambda sensor|lambda probe|lambdasensor*|lambdaprobe*|lsu|lsf|exhaust gas oxygen',
  lambda:
    'a f sensor|af sensor|afs|lambda|lambda[0-9]*|equivalence|equivalenceratio|equiv|equiv ratio|eq ratio|eq rat|eq rat[0-9]*|eqrat*|eqr|afr|afr[0-9]*|a f|air fuel|airfuel*|wideband|wide band|wide range|widerange|wr|wrlambda|uego*|air ratio',
  fuelToAir: 'phi|fuel air|fuel air ratio|fuel air equivalence',
  voltage: 'voltage|volt|volts|output voltage|v|mv|vdc|o2v|[a-z0-9]*volt|[a-z0-9]*voltage',
  current: 'current|ma|pump current|pumping current|milliamps',
  front: 'front|upstream|pre|pre[0-9]|precat|precatalyst|before|primary|upstrm|up|us|ahead|inlet|fr|frt',
  rear: 'rear|downstream|post|post[0-9]|postcat|postcatalyst|after|behind|secondary|dwnstrm|downstrm|dnstrm|down|ds|outlet|rr',
  catalyst: 'cat|catalyst*|catalytic|catemp*|cattemp*|converter|catalyst temp*|catbed|cat bed',
  temperature:
    'temp|temps|temp[0-9]*|temperature|temperature[0-9]*|tmp|[a-z0-9]*temp|[a-z0-9]*temperature|degc|degf|catemp*',
  sensorHelper:
    'heater|htr|heating|resistance|impedance|duty|pwm|ready|readiness|monitor|test|tests|present|presence|location|supported|integrator|learn*|adapt*|period|switches|switching|count|counts|crosscounts|cross counts|status|state|power|position|pos$|sensors|active|enable|enabled|offset|correction|protection|demand|fault|time|transition|transitions|regulation|deviation|knock|cam|camshaft|vvt|injector*|coil|misfire*',
  engine: 'engine|eng|motor',
  engineSpeed:
    'rpm|rpms|rpm[0-9]+|enginerpm|engine speed|enginespeed|eng speed|eng spd|engspd|engine spd|speed engine|engine rev*|revs|rev|tach|tacho*|nmot|n mot|crank speed|crankshaft speed|engine revolutions|revolutions|rotational speed|rotation speed',
  vehicle: 'dyno*|dynamometer|roller|rollers|rolls|vehicle|veh|car|wheel|road|vss*|vehiclespeed',
  speed: 'speed|spd|vss|vss[0-9]*|vehiclespeed|velocity|kmh|kph|mph',
  coolant:
    'coolant|coolanttemp*|ect|ect[0-9]*|clt|cts|ecttemp|water|water temp*|engine temp|engine temperature|engine temp [0-9]|eng temp|engtemp|cool temp|engine cool*|radiator',
  intakeAir:
    'iat|iat[0-9]*|intake air|intakeair*|intake temp*|inlet air|inlet temp*|intake manifold temp*|manifold air temp*|mat|act|air intake|air charge temp*|charge air temp*|air temp|intaketemp*|iattemp',
  otherMedium:
    'oil|ambient|outside|outdoor|transmission|trans|gearbox|tft|fuel temp*|fuel rail|exhaust temp*|exhaust gas temp*|exhaust pressure|egt|egt[0-9]*|battery|cabin|interior|ecu|ecm|pcm|brake|tyre|tire|turbo*|intercooler|hybrid|inverter|evap*|egr|cylinder head|head temp*|dpf|particulate|nox|scr|urea|def|module|control|climate|evaporator|ac|fan|turbine|shaft|input shaft|output shaft|alternator|generator|pump|compressor|coolant level|level coolant|water level|fluid level|coolant flow|water flow|in fuel|payload|electric|electrical|hc|thc|co|co2|ppm|cpu|processor|bus|network',
  airFlow:
    'maf|m air|maf[0-9]*|mafr|mafs|maf rate|mass air|mass airflow|massairflow|mass flow|air flow|airflow|airflow rate|air mass|airmass|mass air flow*|massflow|air flow rate',
  notAir: 'percent|percentage|pct|fuel|exhaust|egr|coolant|water|oil|cylinder|stroke|evap*|purge',
  load: 'load|loadpct|load pct|engload|calcload|calculated load|engine load|calc load|load value|clv|engineload*|loadvalue|[a-z]*load',
  throttle: 'throttle|throttlepos*|tps|tps[0-9]*|tp|thr|thrtl|thrott*|throttle pos*|tpos|thr pos|[a-z]*throttle',
  pedal: 'pedal|accelerator|accel|app|app[0-9]*|pps|acc pedal|accelpedal',
  shortTrim:
    'stft|stft*|shrtft*|shortft*|sft|sft[0-9]*|short term|shortterm*|short fuel trim|short trim|shrt ft|st fuel trim|st trim|short ft|shrt term|shrttrm*|stfuel*',
  longTrim:
    'ltft|ltft*|longft*|lft|lft[0-9]*|long term|longterm*|long fuel trim|long trim|lt fuel trim|lt trim|long ft|lngterm|ltfuel*',
  short: 'short',
  long: 'long',
  trim: 'trim|fuel trim|fueltrim|ft|ft[0-9]*|stft*|ltft*|shrtft*|longft*|fuel correction|trims',
  fuelStatus:
    'fuel system|fuelsystem|fuel sys|fuelsys*|fuel system status|fuel status|fuelstatus|fuel system [0-9]|fuel sys [0-9]|fuel loop|closed loop|open loop|closedloop|loop|loop status|loop state|cl ol|ol cl|fss|fuelsysstatus|fuelsyst*|cl',
  commanded:
    'commanded|cmd|cmded|target|targeted|desired|requested|request|setpoint|set point|theoretical|specified|command|limit|threshold|reference|ref|expected|simulated|max|maximum|minimum|set|stoich*',
  second:
    'modelled|modeled|model|estimated|absolute|abs|relative|rel|gps|b|c|d|e|f|avg|average|filtered|raw|delta|diff|calculated',
  pressure: 'pressure|press|map|baro*|pressure[0-9]*|kpa|psi|vacuum|boost|rail',
  time: 'time|times|timestamp*|time stamp|elapsed|elapsedtime|seconds|second|sec|secs|ms|msec|millis|milliseconds|clock|t|s|timer|runtime|run tine|datetime|time[0-9]*|timems|times|timesec|local time|logtime|rectime|us|x time|epoch|unix|utc|hhmmss',
  date: 'date|day|datum|datetime|date[0-9]*',
  notTime:
    'since|run time|engine start|start time|engine run|runtime|warm up|cleared|mil|timing|distance|advance|spark|ignition|injection|injector|dwell|response|interval',
};
