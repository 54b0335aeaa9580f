/** Spanish as tables. What each role does to a number is said in roles.ts. */
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
  HUNDREDS,
  LABEL,
  MONTH,
  NEGATIVE,
  NOT,
  ORDINAL,
  PARTS,
  PERSON,
  PLAIN,
  POINT,
  POINTING,
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
  [DIGIT, 'cero=0 uno=1 dos=2 tres=3 cuatro=4 cinco=5 seis=6 siete=7 ocho=8 nueve=9'],
  [
    TEEN,
    'diez=10 once=11 doce=12 trece=13 catorce=14 quince=15 dieciseis=16 diecisiete=17 dieciocho=18 diecinueve=19 veintiuno=21 veintiun=21 veintiuna=21 veintidos=22 veintitres=23 veinticuatro=24 veinticinco=25 veintiseis=26 veintisiete=27 veintiocho=28 veintinueve=29',
  ],
  [
    TENS,
    'veinte=20 treinta=30 cuarenta=40 cincuenta=50 sesenta=60 setenta=70 ochenta=80 noventa=90 dieci=10 veinti=20 treintai=30 cuarentai=40 cincuentai=50 sesentai=60 setentai=70 ochentai=80 noventai=90',
  ],
  [
    HUNDREDS,
    'cien=100 ciento=100 doscientos=200 trescientos=300 cuatrocientos=400 quinientos=500 seiscientos=600 setecientos=700 ochocientos=800 novecientos=900',
  ],
  [THOUSAND, 'mil millon millones'],
  [POINT, 'coma punto con=1'],
  [AND, 'y e'],
  [HALF, 'medio=50 media=50 medios=50'],
  [QUARTER, 'cuarto=1 cuartos=1'],
  [
    PARTS,
    'decimo=10 decimos=10 decima=10 decimas=10 centesima=1 centesimas=1 quinto=20 quintos=20 tercio tercios octavo octavos',
  ],
  [ARTICLE, 'un=1 una=1'],
  [
    UNIT,
    'mm=0 milimetro=0 m_m=0 mili_metros=0 cm=1 centimetro=1 pulgada=2 semana=3 celsius=4 grados_celsius=4 puntos=5 grado=6 °=6 gramo=7 mililitro=8 ml=8',
  ],
  [
    ALIEN,
    'm s minuto min segundo hora dia mes ano por_ciento porciento % € $ £ euro dolar peso centavos libras kilo kilogramos kg litro metro km kilometros veces persona paciente pacientes diente dientes muela protesis cucharada cuchara medidas gota pieza cita visita nino hijos fm de_ellos de_ellas de_nosotros de_los de_las de_la de_el del de_estos de_la_tarde de_la_manana mas grandes pequenos nuevos preguntas palabras dedos puntos_de puntos_dolorosos llagas cosas intentos',
  ],
  [CLOCK, 'las hs'],
  [
    MONTH,
    'enero febrero marzo abril mayo junio julio agosto septiembre setiembre octubre noviembre diciembre lunes martes miercoles jueves viernes sabado domingo',
  ],
  [ORDINAL, 'primero primera primer segunda tercero tercera tercer cuarta quinta sexto sexta septimo'],
  [
    LABEL,
    'medida lectura medicion numero intento toma vez prueba valor sala sillon talla cubeta pagina canal diente habitacion paso linea paciente frasco cajon lote capitulo color puerta piso el_ano',
  ],
  [NEGATIVE, 'menos negativo'],
  [RANGE, 'o u a=1 entre hasta o_tal_vez contra ± o_quizas mas_menos'],
  [
    SIDED,
    'casi=1 apenas=1 mas_de=1 menos_de=1 al_menos por_lo_menos como_minimo como_maximo algo_mas_de poco_mas_de un_poco_mas_de un_poco_menos_de un_poco y_un_poco y_pico y_algo y_tantos sobre_todo=1 inferior_a=1 superior_a=1 sin_llegar_a rozando maximo minimo < > ≤ ≥ diga di cuente contar cumplio no_llega_a no_llega_ni_a pico algo como_mucho como_poco a_lo_sumo para_arriba',
  ],
  [
    FIX,
    'no correccion perdon=1 perdona=1 perdone=1 disculpa=1 disculpe=1 digo quiero_decir mejor_dicho o_mejor o_mejor_dicho mejor mas_bien o_mas_bien no_espera espera espere me_equivoque me_he_equivocado equivocado rectifico corrijo borra_eso borra borre_eso olvida_eso olvidalo anula_eso cancela_eso sino ay_no un_momento_no cambialo_a cambia_a cambialo error mal en_realidad=1 o_sea lo_siento=1 no_perdon miento ups uy me_corrijo rectificacion error_mio fallo digo_mejor quise_decir queria_decir un_momento un_segundo momento un_instante la_ultima_era=1 la_ultima_fue=1 el_ultimo_era=1 el_anterior_era=1',
  ],
  [NOT, 'no_es nunca no'],
  [
    COPULA,
    'es son era eran fue fueron mide miden marca marcan indica muestra lee leo dice da dan hay sale salen tengo tenemos hace seria serian esta estan estamos queda llega_a llega_hasta sube_a sube_hasta baja_a baja_hasta a_unos unos unas pon ponga pongamos digamos apunta anota anote escribe escriba registra registre veo obtengo aproximadamente aprox alrededor_de cerca_de exactamente justo mas_o_menos yo_diria diria diria_que me_da me_sale de_unos de_aproximadamente se_queda_en ha_dado dio ha_salido midio aqui_tengo estamos_en esta_en sigue_en en',
  ],
  [POINTING, 'otro otra este esta ese esa cada ningun ninguno de mas lado ultimo primer'],
  [PERSON, 'tiene=1 tienen=1 cumple=1 cumplen=1 ella=1 ellos=1 nosotros yo usted gente=1'],
  [
    PLAIN,
    'el la lo los se me mi mis su sus tu te le les nos yo ella ellos usted nosotros que quien como cuando donde si bueno bien vale ok okay pues entonces asi ahora ya aqui aca ahi alli luego despues todavia aun sigue siendo nuevamente una_vez_mas repito repite igual mismo misma claro exacto exacta justos clavado correcto perfecto listo de_acuerdo gracias por_favor por favor porfa creo pienso parece supongo calculo quiza tal_vez probablemente seguramente seguro deberia ser sea haber decir diria a_ver veamos mira mire oye hola mmm ah aja ay oh con_la con_los con_el con_las de en al para sin sobre desde segun tras ante bajo arriba abajo izquierda izquierdo derecha derecho superior inferior anterior posterior delante detras atras centro mitad lado parte ancho ancha anchura alto alta altura largo longitud profundidad espesor distancia separacion espacio total suma resultado dato cifra nuevo nueva ultima ultimo siguiente actual final medida lectura medicion valor numero calibre calibrador pie rey regla pantalla escala aparato instrumento esfera punta maxilar mandibula mandibular cresta reborde arcada paladar nariz menton barbilla labio boca cara reposo mordida vertical oclusion oclusal dimension cerrada cerrado abierta abierto juntos juntas relajado relajada almohadilla papila tuberosidad vestibulo surco lengua mejilla maxima maximo minima mas_estrecha hoy solo solamente redondo limpio doctor doctora senor senora enfermera nada tambien pero porque cual cuanto muy poco comprobado confirmo confirmado control media_de promedio queda quedan estable anoto registrado tomo tomamos medido segunda tercera cuarta primera primero tercer frente aproximado redondeando estimo vamos va sera ojo en_medio pone ponle poner puesto deja dejamos dejemoslo deje definitivo definitiva definitivamente entendido cambio lados aguja calculado estimado estimacion medir midiendo hallado encontrado encuentro mete introduce introduzca registro conste expediente ficha hoja apuntalo anotado leido total_final al_final totalmente completo entero perfectamente estupendo genial bonito facial respecto alrededor cuerpo extremo borde diametro perimetro arco frontal lateral mediano nasal base labial comisura linea verificado verificacion media aguanta fijo fija mantiene sube baja marca_el simplemente solo_eso realmente efectivamente aparentemente creeria pensaria encima debajo dentro fuera_de justo_en antes_de despues_de tragar apunto punto_medio viendo senala apretando centrica apenas tocandose interior exterior repeticion punto_de faltan ensenar debe nomas',
  ],
  [
    TALK,
    'nos_vemos tarde manana noche edad cumple cumpleanos nacio nacido precio cuesta cuestan pagar pago telefono nieto nieta hijo hija esposo esposa marido mujer abuela abuelo madre padre perro gato calle tren vuelo partido gol canal emisora radio cancion pelicula vacaciones tiempo_hoy cafe comida ayer piso planta iglesia escuela peso_corporal pesa fiebre temperatura pagina calor hace_calor grados_hoy cuenta_hasta tia tio vecino vecina amigo amiga jefe colega hermano hermana sobrino sobrina primo prima',
  ],
  [
    DOUBTFUL,
    'los las estos estas esos esas ambos ambas en solo mis sus unos sala sillon talla cubeta pagina canal diente habitacion paso linea paciente frasco cajon lote capitulo color puerta piso numero el_ano',
  ],
];
