import type { Vocabulary } from './concepts.ts';

/** French words of the trade, without accents. */
export const FRENCH: Vocabulary = {
  oxygenSensor:
    'sonde|sondes|sonde lambda|sonde o2|sonde oxygene|capteur o2|capteur oxygene|capteur d oxygene|oxygene|sonde a oxygene',
  lambda: 'rapport air carburant|air carburant|large bande|proportionnelle|coefficient d air',
  fuelToAir: 'richesse',
  voltage: 'tension|volts',
  current: 'courant|courant pompage',
  front: 'amont|avant|precata*|entree',
  rear: 'aval|arriere|apres|postcata*|sortie',
  catalyst: 'catalyseur*|cata|pot catalytique|catalytique',
  temperature: 'temperature|temp|temperatures',
  sensorHelper: 'chauffage|rechauffage|resistance|etat|presence|essai|impedance|ecart',
  engine: 'moteur',
  engineSpeed: 'regime|regime moteur|tours|tours moteur|vitesse moteur|vitesse rotation*|tr min|trmin|nb tours',
  vehicle: 'vehicule|voiture|roue',
  speed: 'vitesse|vitesse vehicule',
  coolant:
    'refroidissement|liquide refroidissement|eau|temperature eau|temp eau|temperature moteur|temp moteur|liquide refroid*|ldr|eau moteur|refroid*',
  intakeAir: 'admission|air admission|air admis|temperature air|temp air|air aspire|collecteur admission',
  otherMedium:
    'huile|ambiant*|exterieur*|boite|echappement|batterie|habitacle|frein*|carburant temp*|air ambiant|rampe|niveau|utile',
  airFlow:
    'debit air|debit d air|debit masse*|masse d air|masse air|debitmetre|debit massique*|flux air|flux d air|debit',
  notAir: 'carburant|essence|gazole|gasoil|echappement|eau|huile|cylindre|recyclage',
  load: 'charge|charge moteur|charge calculee',
  throttle: 'papillon|position papillon|boitier papillon|angle papillon',
  pedal: 'pedale|accelerateur',
  shortTrim: 'court terme|correction court*|correction rapide|instantanee|ctc',
  longTrim: 'long terme|correction long*|correction lente|adaptative|ltc',
  short: 'court',
  long: 'long',
  trim: 'correction|correction carburant|correction richesse|correction melange|ajustement carburant|compensation carburant|ajustement',
  fuelStatus:
    'systeme carburant|etat systeme carburant|boucle|boucle fermee|boucle ouverte|etat boucle|systeme alimentation',
  commanded: 'consigne|commande|commandee|cible|demande*|seuil|maximum|limite',
  second: 'absolu*|relati*|moyen*|filtre*|calcule*',
  pressure: 'pression|pression*',
  time: 'temps|heure|secondes|horodatage|duree|temps[0-9]*|temps ecoule|minuterie|instant',
  date: 'date|jour',
  notTime: 'depuis|demarrage|avance|allumage|injection|fonctionnement',
};
