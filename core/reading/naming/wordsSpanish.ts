import type { Vocabulary } from './concepts.ts';

/** Spanish words of the trade, without accents. */
export const SPANISH: Vocabulary = {
  oxygenSensor: 'sonda|sondas|sonda lambda|sonda[0-9]*|oxigeno|sensor o2|sensor oxigeno|sensor de oxigeno',
  lambda: 'relacion aire combustible|aire combustible|banda ancha|relacion equivalencia|relacion lambda|valor lambda',
  fuelToAir: 'dosado',
  voltage: 'voltaje|tension|voltios|voltio|milivoltios',
  current: 'corriente|intensidad',
  front: 'delanter*|anterior|previo|previa|antes|precatalizador|aguas arriba|entrada|primera',
  rear: 'traser*|posterior|despues|postcatalizador|pos catalisador|poscatalisador|aguas abajo|salida|segunda|tras',
  catalyst: 'catalizador*|catalitico|convertidor',
  temperature: 'temperatura|temp|temperaturas',
  sensorHelper: 'calefactor|calentador|calefaccion|resistencia|estado|presente|prueba|monitor|impedancia|desviacion',
  engine: 'motor',
  engineSpeed:
    'revoluciones|regimen|regimen motor|rpm motor|velocidad motor|vueltas|giro|giro motor|velocidad giro|vueltas motor',
  vehicle: 'vehiculo|coche|auto|rueda',
  speed: 'velocidad|velocidad vehiculo',
  coolant:
    'refrigerante|liquido refrigerante|agua|temperatura motor|temp motor|temperatura agua|anticongelante|liquido enfriamiento|enfriamiento',
  intakeAir: 'admision|aire admision|aire aspirado|temperatura aire|temp aire|colector admision|aire entrada',
  otherMedium:
    'aceite|ambiente|exterior|caja cambios|escape|bateria|habitaculo|freno*|combustible temp*|aire ambiente|nivel|util',
  airFlow:
    'flujo aire|caudal aire|masa aire|flujo masico*|caudal masico*|caudalimetro|flujo masa aire|caudal|flujo masa*',
  notAir: 'combustible|gasolina|gasoleo|escape|agua|aceite|cilindro|carrera',
  load: 'carga|carga motor|carga calculada',
  throttle: 'mariposa|posicion mariposa|acelerador posicion|estrangulador|cuerpo aceleracion|obturador',
  pedal: 'pedal|pedal acelerador|acelerador',
  shortTrim: 'corto plazo|ajuste corto*|correccion corto*',
  longTrim: 'largo plazo|ajuste largo*|correccion largo*',
  short: 'corto',
  long: 'largo',
  trim: 'ajuste|ajuste combustible|correccion combustible|correccion mezcla|correccion|compensacion combustible',
  fuelStatus:
    'sistema combustible|estado sistema combustible|lazo|lazo cerrado|lazo abierto|bucle|bucle cerrado|estado bucle',
  commanded:
    'objetivo|deseado|deseada|ordenado|comandado|comandada|solicitado|consigna|limite|maximo|maxima|minimo|minima',
  second: 'absolut*|relativ*|media|promedio|filtrad*|calculad*',
  pressure: 'presion',
  time: 'tiempo|hora|segundos|marca tiempo|transcurrido|tiempo[0-9]*|seg|milisegundos|instante',
  date: 'fecha|dia',
  notTime: 'desde|arranque|encendido|avance|inyeccion|funcionamiento',
};
