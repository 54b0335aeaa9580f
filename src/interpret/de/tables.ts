/** German as tables. What each role does to a number is said in roles.ts. */
import type { WordTable } from '../language.ts';
import {
  ALIEN,
  AND,
  ARTICLE,
  CLOCK,
  COPULA,
  DIGIT,
  DOUBTFUL,
  FIX,
  HALF,
  HUNDRED,
  LABEL,
  MONTH,
  NEGATIVE,
  NOT,
  ORDINAL,
  PARTS,
  PERSON,
  PLAIN,
  POINT,
  QUARTER,
  RANGE,
  SIDED,
  TALK,
  TEEN,
  TENS,
  THOUSAND,
  UNIT,
} from '../roles.ts';

export const words: WordTable = [
  [DIGIT, 'null=0 eins=1 zwei=2 zwo=2 drei=3 vier=4 funf=5 fuenf=5 sechs=6 sieben=7 acht=8 neun=9'],
  [
    TEEN,
    'zehn=10 elf=11 zwolf=12 zwoelf=12 dreizehn=13 vierzehn=14 funfzehn=15 fuenfzehn=15 sechzehn=16 siebzehn=17 achtzehn=18 neunzehn=19',
  ],
  [
    TENS,
    'zwanzig=20 dreissig=30 dreizig=30 vierzig=40 funfzig=50 fuenfzig=50 sechzig=60 siebzig=70 siebenzig=70 achtzig=80 neunzig=90',
  ],
  [HUNDRED, 'hundert=100'],
  [THOUSAND, 'tausend million millionen'],
  [POINT, 'komma punkt'],
  [AND, 'und'],
  [HALF, 'halb=50 halbe=50 halben=50 halber=50 halbes=50 anderthalb=150'],
  [QUARTER, 'viertel=1'],
  [PARTS, 'zehntel=10 hundertstel=1 funftel=20 fuenftel=20 drittel achtel'],
  [ARTICLE, 'ein=1 eine=1 einen=1 einem=1 einer=1 eines=1'],
  [
    UNIT,
    'mm=0 millimeter=0 milli_meter=0 m_m=0 cm=1 zentimeter=1 zoll=2 inch=2 woche=3 celsius=4 grad_celsius=4 punkte=5 grad=6 °=6 gramm=7 milliliter=8 ml=8',
  ],
  [
    ALIEN,
    'm s minute sekunde stunde tag monat jahr prozent % € $ £ euro cent dollar kilo kilogramm kg liter meter km kilometer mal leute patient patienten patientin patientinnen zahn zahne zaehne zahnen druckstelle stelle stellen prothese loffel loeffel messloffel messloeffel tropfen stuck stueck termin besuch kind personen fragen worte fm davon von_ihnen von_uns von_den von_denen andere grosse kleine neue alte bisschen paar weitere mehr weniger finger abdrucke abdruecke versuche',
  ],
  [CLOCK, 'uhr nach vor mittags abends morgens'],
  [
    MONTH,
    'januar februar marz maerz april mai juni juli august september oktober november dezember montag dienstag mittwoch donnerstag freitag samstag sonntag',
  ],
  [ORDINAL, 'erste zweite dritte vierte funfte fuenfte sechste siebte achte neunte zehnte elfte zwolfte'],
  [
    LABEL,
    'messung wert nummer nr versuch messwert ablesung durchgang zahl stuhl zimmer grosse zahn kanal raum bus linie schritt loffel loeffel patient flasche schublade charge kapitel farbe im_jahr',
  ],
  [NEGATIVE, 'minus'],
  [RANGE, 'oder bis zwischen und_vielleicht beziehungsweise bzw plus ± entweder'],
  [
    SIDED,
    'knapp=1 fast=1 beinahe=1 etwas_uber=1 etwas_ueber=1 etwas_unter=1 gut_und_gerne mindestens=1 hochstens=1 hoechstens=1 uber=1 ueber=1 unter=1 mehr_als=1 weniger_als=1 kaum=1 nicht_ganz=1 maximal minimal gut=1 ein_bisschen und_ein_bisschen und_etwas und_ein_wenig ein_wenig_mehr wenig_mehr weniger mehr < > ≤ ≥ max min zahlen zaehlen sagen_sie sag alter sagen gute=1 und_so_weiter und_ein_paar irgendwas ungerade aufwarts aufwaerts',
  ],
  [
    FIX,
    'nein nee no korrektur quatsch moment ich_meine meine_ich falsch warte halt stopp doch doch_nicht ach_nein oder_besser oder_eher oder_vielmehr beziehungsweise_besser vielmehr besser sondern ich_korrigiere korrigiere streich_das streichen vergiss_das vergessen_sie_das losch_das loesch_das nicht_doch mein_fehler verlesen versprochen vertan entschuldigung=1 sorry=1 pardon=1 verzeihung=1 entschuldige=1 eigentlich=1 moment_mal warten_sie korrigiert korrigieren ach_so=1 andere_das aendere_das stimmt_nicht fehler ups hoppla besser_gesagt das_heisst verbessere verbessern ich_korrigiere_mich verzeih irrtum falsch_abgelesen vielmehr_doch ich_meinte meinte einen_moment eine_sekunde augenblick einen_augenblick kleinen_moment der_letzte_war=1 die_letzte_war=1 das_letzte_war=1 der_vorige_war=1',
  ],
  [NOT, 'nicht kein keine'],
  [
    COPULA,
    'ist sind war wird misst messe gemessen zeigt betragt betraegt macht gibt lese liest sagt hat habe haben ergibt zeige sehe bekomme komme_auf komm_auf kommen_auf bei auf sagen_wir sagen_wir_mal nehmen_wir nehme schreib schreiben_sie notiere notiert notieren trag eintragen waere waren_dann steht liegt genau gleich ca circa zirka etwa ungefahr ungefaehr rund s ists_jetzt wurde_sagen wuerde_sagen ich_wurde_sagen ich_wuerde_sagen',
  ],
  [PERSON, 'er_ist=1 sie_ist=1 ich_bin=2 er_wird=1 sie_wird=1 er_hat=1 sie_hat=1 wird=1 er ihr wir ich man leute'],
  [
    PLAIN,
    'der die das den dem des er sie es ich wir ihr man mir uns dir ihnen mein dein seine hier da dort dann jetzt nun so ok okay ja jawohl genau gut na alles klar bitte danke schon schoen sehr mal also hm aha ach oh gar sagen wurde wuerde glaube denke finde schatze schaetze tippe vermute wahrscheinlich vielleicht wohl sicher sicherlich bestimmt eben gerade noch nochmal einmal ein_mal wieder immer wiederhole wiederholung erneut diesmal diese heute zuletzt letzte nachste naechste neu vorher vorhin schliesslich insgesamt zusammen total summe wie als auch aber weil wenn ob mit ohne von vom zum zur zu im in am an auf aus durch fur fuer um bei ab hin her oben unten linke obere untere vorn hinten mitte mittig seite hohe hoehe laenge abstand distanz strecke spanne dicke mass messwert wert messung ablesung anzeige skala schieblehre messschieber lehre zirkel lineal instrument gerat geraet bildschirm spitze kiefer oberkiefer unterkiefer kamm kieferkamm ridge kante rand nase kinn lippe mund ruhe ruhelage ruhehohe ruhehoehe ruhewert biss bisshohe bisshoehe vertikale schluss schlussbiss okklusion zahne zaehne gesicht gaumen zunge tuber trigonum polster wange breitest schmalste hochste tiefste grosste groesste kleinste stelle geschlossen offen geoffnet geoeffnet entspannt locker sieht seht abgelesen passt stimmt richtig perfekt prima super fein recht exakt prazise praezise ziemlich fertig ergebnis endwert mittelwert schnitt durchschnitt danke_schon bleibt bleiben liegen stehen messen lesen ablesen schau gucken gib gebe nimm notier protokoll aufschreiben ins kopf sitzt fest rein raus unverandert unveraendert selbe gleiche mehr_oder_weniger plusminus herr frau doktor patientin beim erste zweite dritte dazu breit hoch tief lang weit gross klein kommt komm drauf darauf gerechnet angezeigt angegeben laut kontrolle kontrollmessung kontrolliert bestatigt bestaetigt bestatige bestaetige sofort nach_links nach_rechts nach_oben nach_unten nach_hinten nach_vorne nach_der vor_der vor_dem nach_dem nach_wie_vor sieht_nach hab setz halte endgultig endgueltig ende strich grob geschatzt geschaetzt haargenau aussen innen ergab ergeben zeiger kommt_raus notiz nasensteg steg ergebnisse einstellen eingestellt eingeben eintragung stand endstand anhalt naherung naeherung pi daumen verstanden schwebe schleimhaut zunachst zunaechst erstmal einfach nur halt_mal doch_noch immerhin tatsachlich tatsaechlich wirklich eigentlicher offenbar scheinbar anscheinend komplett ganze voll glatt sauber runde runden leicht rein_gemessen differenz breitenmass langenmass durchmesser umfang umfassung bogen zahnbogen front frontal seitlich lateral median mittelpunkt ansatz nasenwurzel kinnspitze mundwinkel unterlippe oberlippe zeile feld bogenbreite bitte_notieren aufgeschrieben vermerkt gespeichert speichern ubernehmen uebernehmen passend wiederum nochmalig wiederholt jeweils beide_seiten beidseits punkt_zu_punkt quer akte sollte landen nadel zentrik zubeissen inner ausser uber_die ueber_die jo dinge',
  ],
  [
    TALK,
    'wir_sehen_uns sehen_uns jahrig jaehrig alt geburtstag geboren preis kostet kosten bezahlt telefon telefonnummer enkel enkelin sohn tochter mann ehemann oma opa mutter vater hund katze strasse zug flug spiel tore kanal sender radio lied film urlaub wetter kaffee essen mittagessen morgen gestern wochenende stockwerk etage kirche schule gewicht wiegt fieber temperatur punktestand prozentig zahl_bis zahlen_sie zaehlen_sie verabredet tante onkel nachbar nachbarin freund freundin chef kollege kollegin bruder schwester nichte neffe',
  ],
  [
    DOUBTFUL,
    'diese die den der alle beide in nur um meine ihre seine unsere jede zimmer stuhl grosse seite zahn kanal raum bus linie schritt loffel loeffel patient flasche schublade kapitel farbe nummer im_jahr',
  ],
];
