/** English as tables. What each role does to a number is said in roles.ts. */
import type { WordTable } from '../language.ts';

export const words: WordTable = {
  digit: 'zero=0 nought=0 naught=0 one=1 two=2 three=3 four=4 five=5 six=6 seven=7 eight=8 nine=9',
  teen: 'ten=10 eleven=11 twelve=12 thirteen=13 fourteen=14 fifteen=15 sixteen=16 seventeen=17 eighteen=18 nineteen=19',
  tens: 'twenty=20 thirty=30 forty=40 fourty=40 fifty=50 sixty=60 seventy=70 eighty=80 ninety=90',
  hundred: 'hundred=100',
  thousand: 'thousand million billion',
  point: 'point dot decimal comma decimal_point',
  and: 'and',
  half: 'half=50 halves=50',
  quarter: 'quarter=1 quarters=1',
  parts: 'tenth=10 tenths=10 fifth=20 fifths=20 hundredth=1 hundredths=1 fourths=25 third thirds eighth eighths',
  article: 'a=1 an=1',
  oh: 'oh o',
  middle: 'to=2 too=2 for=4',
  sounds: 'won=1 tree=3 fore=4 fife=5 ate=8 niner=9',
  unit: 'mm=0 milli=0 mil=0 mill=0 millimetre=0 millimeter=0 m_m=0 milli_meters=0 milli_metres=0 cm=1 centimetre=1 centimeter=1 inch=2 inches=2 week=3 celsius=4 degree_celsius=4 degrees_celsius=4 points=5 degree=6 °=6 gram=7 gramme=7 millilitre=8 milliliter=8 ml=8',
  alien:
    'minute min second seconds sec secs hour day month year percent per_cent % € $ £ euro dollar pound quid cents pence kilo kilogram kg litre liter metre meter kilometre km mile foot feet yard times people patient person patients teeth tooth sore spots dentures scoop spoon drop pieces visit appointment kid children fm nil of_them of_us of_those of_these of_you of_my of_the of_it of_this of_that more_time more other thing things fingers words questions reasons options more_minutes m s little big large small different new old extra separate',
  clock: 'clock o_clock oclock am pm a_m p_m past noon midnight',
  month:
    'january february march april may june july august september october november december monday tuesday wednesday thursday friday saturday sunday',
  ordinal:
    'first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth twentieth thirtieth st nd rd th',
  label:
    'reading number measurement attempt try take trial time go run round pass tray chair room size step visit page line item tooth patient case shade bottle box drawer shelf version floor channel code lot batch bus route gate platform question verse chapter',
  negative: 'minus negative',
  range: 'or to between through till until versus vs plus ± plus_or_minus either',
  sided:
    'under over above below nearly almost barely least most less more more_than less_than just_under just_over not_quite at_least at_most a_bit a_little a_touch a_hair a_shade a_fraction a_tad and_a_bit and_change bit_over bit_under up_from < > ≤ ≥ maximum minimum max and_some plus say_to she_is he_is she_s he_s i_m they_re they_are you_re you_are i_am who_is who_s turn turned count counted count_to counting_to say saying age',
  fix: 'no nope scratch_that strike_that scrap_that make_that make_it i_mean i_meant or_rather no_wait wait correction oops whoops my_mistake my_bad hang_on hold_on correct_that should_be should_read should_have_been change_that change_it undo wrong that_s_wrong that_was_wrong take_that_back take_it_back correct_myself correct_me let_me_correct_myself cancel_that delete_that forget_that ignore_that disregard_that i_misread misread i_misspoke sorry=1 actually=1 rather=1 pardon=1 excuse_me=1 instead=1 correcting=1 apologies=1 in_fact=1 on_second_thought on_second_thoughts on_reflection come_to_think_of_it amend_that revise_that scratch',
  not: 'not isn_t wasn_t aint never',
  copula:
    'is s was are read say_s says said show measure give make equal be comes_to came_to comes_out_at comes_out_to came_out_at comes_out_as works_out_at works_out_to call_it call_that make_it=0 i_make_it i_make_that make_that=0 got have get had has at_about at_around it_at that_at them_at i_d_say i_would_say would_say d_say want_to_say let_s_say stand_at sits_at sitting_at standing_at clocks_in_at comes_in_at came_in_at ends_up_at ended_up_at land_on settle_at settle_on measures_up_at she_s_at he_s_at she_s_reading she_s_measuring we_re_at i_m_getting i_m_reading i_m_seeing i_m_at i_m_measuring i_m_calling she_is_at he_is_at i_am_getting i_am_reading put_down write_down note_down jot_down mark_down take_down down log record enter mark register would_be will_be going_to_be about around roughly approximately exactly',
  pointing:
    'this that the last next first second third fourth fifth left right upper lower other which every each any no another same new old previous final front back top bottom middle good of more side my your our',
  plain:
    'i_think came pretty sort kind want region area section zone even i you we she he they them me us it its here there then now so ok okay alright well yes yeah yep yup please thank cheers approx precisely dead bang spot solid maybe perhaps probably let think guess believe reckon would will ll d m re ve can could might must like look seem appear with from on in at by of as up down out into across than if but because again repeat still once only just simply very quite nice fine lovely perfect great super ready done finish come go goes gone going went see take taken put type save keep kept set add plan result value figure distance width length height depth gap space span reach sum total amount size dimension caliper calliper gauge dial vernier display scale screen instrument ruler jaw tip arm ridge arch maxilla maxillary mandible mandibular anterior posterior buccal lingual palatal palate labial crest pad retromolar molar tuberosity tuberosities vestibule sulcus flange border rim base denture bone nose chin face facial lip mouth rest vertical occlusal occlusion bite close open freeway interocclusal left right side front back rear top bottom middle mid midline centre center outer inner outside inside wide widest narrow narrowest tall deep deepest greatest largest smallest longest long broad high apart thick part together mr mrs ms doctor doc nurse today these those his her their my your mine who what where how when why much do does did doing don_t not_sure yet already home over_here over_there over_to over_the hmm ah aha ooh huh hey more_or_less thereabouts ish some something anyway also roger copy check confirm affirmative correct sure certain definitely final answer turn_out turns_out turned_out found feel everything all steady hold stable stay remain average mean median clean flat full whole straight decent one_by_one while since before after off am been being both without any bad problem doubt change worry worries course relax swallow this_point that_point the_point widest_point high_point low_point highest_point lowest_point narrowest_point deepest_point contact_point at_point starting_point end_point reference_point good_point my_point no_point any_point some_point quick use using work one_more comfortable honestly basically literally obviously apparently supposedly gentle gently careful level line mark dot_on skin pencil far need end edge moved dropped record',
  talk: 'score scored game match price pay paid phone telephone born birthday aged grandson granddaughter grandmother grandfather son daughter husband wife mother father dog cat floor street road bus train flight page chapter episode channel station radio song film movie room ward tomorrow yesterday holiday lunch breakfast dinner coffee tea weather traffic weekend football party lottery temperature fever weigh weight kitchen shop church school sleep slept ago cost come_back see_you call_me fare ticket goal team vote percentage news ring rang appointment booked book spoonfuls degree_today',
  doubtful:
    'there_s there_is there_are these those both the at in by only every my your his her our their within after before us them you the_same for of until since tray chair room size step visit page item tooth patient shade bottle box drawer shelf version floor channel code lot batch bus route gate platform question verse chapter some all another any',
};
