import type { Vocabulary } from './concepts.ts';

/** German words of the trade, without umlauts as plainWords leaves them. */
export const GERMAN: Vocabulary = {
  oxygenSensor:
    'sonde|sonden|sonde[0-9]*|sondenspannung*|lambdasond*|lambda sond*|*sauerstoff*|regelsonde*|monitorsonde*|vorkatsonde|nachkatsonde|breitbandsonde*|sprungsonde*|[a-z]*sonde|[a-z]*sondenspannung|lsvk*|lshk*|usvk*|ushk*',
  lambda:
    'lambdawert*|lambda wert|luftverhaltnis|luftzahl|breitband*|luft kraftstoff*|luft kraftstoffverhaltnis|lambdaist*',
  voltage: 'spannung|*spannung|spg|u',
  current: 'strom|pumpstrom|*strom',
  front: 'vk|lsvk*|usvk*|vkat|v kat|vor|vorne|vorn|vorder*|vorkat*|vor kat*|regelsonde*|erste|oben|stromauf*',
  rear: 'nk|lshk*|ushk*|nkat|n kat|nach|hinten|hinter*|nachkat*|nach kat*|monitorsonde*|zweite|unten|stromab*',
  catalyst: 'kat|katalysator*|*kat|*katalysator*|kattemp*',
  temperature: 't vor*|t nach*|t kat*|temperatur|*temperatur|temp|*temp',
  sensorHelper:
    'heizung|*heizung|heizer|heizleistung|widerstand|innenwiderstand|tastverhaltnis|bereit*|regelfaktor*|status|zustand|prufung|alterung|abweichung|*abweichung|klopf*|nocken*',
  engine: 'motor',
  engineSpeed: 'drehzahl|*drehzahl|motordrehz*|umdrehung*|upm|nmot',
  vehicle: 'fahrzeug*|fahr*|kfz|rad',
  speed: 'geschwindigkeit|*geschwindigkeit|tempo|geschw|v fzg|vfzg',
  coolant:
    'kuhl|*hlmittel*|t motor|tmotor|t mot|tmot|t kw|tkw|kuhlwasser*|kuhlfl*|kuehl*|kuhlmitteltemp*|motortemp*|wassertemp*|wasser|motor temp*',
  intakeAir: 'ansaugluft*|ansaug*|ansauglufttemp*|ladeluft*|lufttemperatur*|saugrohrtemp*',
  otherMedium:
    'ol|oltemp*|motorol*|*oel*|aussen*|umgebung*|getriebe*|kraftstofftemp*|abgas*|batterie*|innenraum*|bremse*|oltemperatur|*mittelstand|*wasserstand',
  airFlow: 'm luft|mluft|luftmasse*|*luftmasse*|lmm|luftmassenstrom|luftmengen*|luftmenge*|luftdurchsatz|hfm',
  notAir: 'kraftstoff*|abgas*|hub|zylinder|wasser*',
  load: 'last$|[a-z]*last|last berechnet*|last absolut*|lastwert|lastzustand|motorlast|fullung*',
  throttle: 'drosselklappe*|*drosselklappe*|dk|dk winkel|dkw*|drossel*|dk stellung',
  pedal: 'fahrpedal*|gaspedal*|pedal*|pedalwert*',
  shortTrim:
    'kurzzeit*|kurzfrist*|*kurzzeit*|lambdaregler*|lambda regler*|gemischregelung|kurzzeitkorrektur|kraftstoffkorrektur kurz*',
  longTrim: 'langzeit*|langfrist*|*langzeit*|gemischadaption*|langzeitkorrektur|kraftstoffkorrektur lang*',
  short: 'kurz',
  long: 'lang',
  trim: 'kraftstoffkorrektur*|gemischkorrektur*|kraftstofftrimm*|trimm*|kraftstoffanpassung*|gemischanpassung*',
  fuelStatus:
    'kraftstoffsystem*|regelkreis*|lambdaregelung|lambda regelung|status lambdaregelung|kraftstoff system*|lambdastatus|regelstatus',
  commanded: 'soll|*soll|sollwert*|*sollwert|vorgabe|grenzwert|zielwert|maximal*',
  second: 'absolut*|relativ*|mittel*|gefiltert|berechnet',
  pressure: 'druck|*druck|saugrohrdruck|ladedruck|luftdruck',
  time: 'zeit|zeitstempel*|uhrzeit|messzeit|sekunden|sek|laufzeit|millisekunden|zeit[0-9]*|zeitpunkt|relativzeit',
  date: 'datum',
  notTime: 'seit|motorlaufzeit|motorstart|zundzeitpunkt|einspritz*|einspritzzeit|schliesszeit',
};
