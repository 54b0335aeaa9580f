/** English as tables. */
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
  parts: 'tenth=10 tenths=10 fifth=20 fifths=20 hundredth=1 hundredths=1 third=0 thirds=0 eighth=0 eighths=0',
  article: 'a=1 an=1',
  oh: 'oh o',
  middle: 'to=2 too=2 for=4',
  sounds: 'won=1 tree=3 fore=4 fife=5 ate=8 niner=9',
  unit: 'mm=0 mil=0 mils=0 mill=0 mills=0 millimetre=0 millimetres=0 millimeter=0 millimeters=0 millimetric=0 m_m=0 milli_meters=0 milli_metres=0 cm=1 cms=1 centimetre=1 centimetres=1 centimeter=1 centimeters=1 inch=2 inches=2 weeks=3 week=3 celsius=4 degrees_celsius=4 points=5 degrees=6 degree=6 °=6 grams=7 gram=7 gramme=7 grammes=7 millilitre=8 millilitres=8 milliliter=8 milliliters=8 ml=8',
  alien:
    'minute minutes min mins second seconds sec secs hour hours day days month months year years percent per_cent % € $ £ euro euros dollar dollars pound pounds quid cents pence kilo kilos kilogram kilograms kg litre litres liter liters metre metres meter meters kilometre kilometres km mile miles foot feet yard yards times people patients teeth tooth fillings dentures trays spoons scoops drops pieces cases visits appointments o clock chairs kids children euros fm nil all of_them of_us of_those of_these of_you of_my of_the_teeth of_the_patients more_time more_times other_patients',
  clock: 'clock o_clock oclock am pm a_m p_m past noon midnight',
  month:
    'january february march april may june july august september october november december monday tuesday wednesday thursday friday saturday sunday',
  ordinal:
    'first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth twentieth thirtieth st nd rd th',
  label:
    'reading number measurement attempt try take trial time go pass number_s no_s reading_number measurement_number take_number try_number attempt_number run round value_number',
  negative: 'minus negative',
  range:
    'or to between through till until versus vs plus ± / plus_or_minus and_maybe either somewhere_between anywhere_between range',
  sided:
    'under over above below nearly almost barely least most less more_than less_than just_under just_over not_quite at_least at_most a_bit a_little a_touch a_hair a_shade a_whisker a_fraction a_tad and_change some_more bit_over bit_under up_from < > ≤ ≥ ± change ish_or_more maximum minimum max min_of',
  fix: 'no nope scratch_that strike_that scrap_that make_that make_it no_make_it no_make_that i_mean i_meant or_rather no_wait wait correction oops whoops my_mistake my_bad hang_on hold_on let_me_correct_that let_me_correct correct_that should_be it_should_be should_read should_have_been change_that_to change_it_to change_that change_to cancel_that delete_that forget_that ignore_that disregard_that better_make_it i_misread misread i_misspoke sorry=1 actually=1 rather=1 pardon=1 excuse_me=1 instead=1 correcting=1 apologies=1 well_actually=1 no_sorry sorry_no in_fact=1 on_second_thought on_second_thoughts on_reflection come_to_think_of_it amend_that amended_to corrected_to correct_to revise_that revised scratch',
  not: 'not isn_t wasn_t aint never',
  copula:
    'is s was are reads read reading_is says said shows showing showed measures measured measuring gives gave makes equals equal be comes_to came_to comes_out_at comes_out_to came_out_at come_out_at comes_out_as works_out_at works_out_to call_it make_it=0 i_make_it make_that=0 got have get getting has had = at_about at_around it_at that_at them_at this_at i_d_say stands_at sits_at sitting_at standing_at clocks_in_at comes_in_at came_in_at ends_up_at ended_up_at lands_on landed_on settles_at settled_on settles_on measures_up_at reads_out_at',
  pointing:
    'this that the last next first second third left right upper lower other which every each any no another same new old previous final front back top bottom middle good of more side 1st my your our',
  plain:
    'one_by_one one_at_a_time mister nope_not it i you we she he they them there here then now so ok okay alright right_then well yes yeah yep yup please thanks thank_you thank cheers about around roughly approximately approx approximate exactly exact precisely dead dead_on spot_on bang bang_on just_about maybe perhaps probably say saying let me us think guess believe reckon would will ll d m re ve can could might must like looks seems appears with from on in at by of as up down out into across between_the=0 than if but because again repeat repeating still once more only just even simply very nice nicely good great fine lovely perfect brilliant super done finished ready go going gone come came comes coming look looking see seeing seen take taken taking taking_it put note_down write_down jot_down put_down mark_down mark_it_down down log record recorded recording enter entered enter_a type save keep kept register set setting add mark give gives giving go_with going_with going_for go_for plan read reading result value figure distance width length height depth gap space span reach total sum amount size measurement dimension measure caliper calipers calliper callipers gauge dial vernier display scale screen instrument tool ruler jaw jaws tip tips arm beak ridge ridges arch upper lower maxilla maxillary mandible mandibular anterior posterior buccal lingual palatal palate labial crest pad pads retromolar molar tuberosity tuberosities vestibule sulcus flange border rim base nose chin face facial lip lips mouth rest resting vertical occlusal occlusion bite closed open opening freeway interocclusal left right side sides front back rear top bottom middle mid midline centre center central outer inner outside inside widest narrowest tallest deepest greatest largest smallest longest wide broad high tall long deep apart thick patient case mr mrs ms doctor doc nurse today time this one_more that the these those its it_s his her hers their our my your mine who what which where how when why much does do did doing don_t not_sure yet already back home over_here over_there oh_yes hmm ah aha ooh right_there right_here so_far for_now for_you for_me for_us for_the for_this for_that for_her for_him for_it for_today for_that_one for_this_one for_left for_right for_upper for_lower to_be to_me to_the that_is to_you i_ve i_m on_the_nose or_so or_thereabouts give_or_take more_or_less thereabouts ish or_something some something like_that anyway also too_then please_note for_the_record roger copy check checking checked confirm confirmed confirming affirmative correct sure certain definitely actually_yes final answer came_back turns_out turned_out looks_to_be appears_to_be found find_it finding finds feels everything all_right all_good all same previous latest last next new another second_go steady holding stable stays stayed remains repeated repeatedly average mean median exactly_on right_on right_at now_then same_again solid clean even flat full whole round straight decent bare of_a about_a call it_is calling to_about up_to down_to out_to back_to close_to next_to near nearer closer towards over_to opens_to opened_to opened_up_to opens_up_to closes_to closed_to drops_to dropped_to down_at up_at out_at comes_down_to comes_up_to comes_out got_to get_to went_to goes_to taking_us_to brings_us_to brought_to moved_to to_write to_note to_record want_to wants_to need_to have_to going_to able_to due_to according_to compared_to set_to try_to trying_to used_to like_to equals_to equal_to amounts_to amounted_to adds_up_to what_s where_s here_s there_s while since before after off am been being any both the_same without any_more not_bad no_problem no_doubt no_change no_change_at no_worries of_course for_sure for_certain for_good',
  talk: 'score scored game match price priced cost costs pay paid phone telephone dial_up born birthday age aged old grandson granddaughter grandmother grandfather son daughter husband wife mother father dog cat floor street road bus train flight platform page chapter episode channel station radio song film movie room ward appointment tomorrow yesterday holiday lunch breakfast dinner coffee tea weather traffic weekend kids football goals news party lottery temperature fever weigh weighs weight kitchen shop church school class grade bedroom sleep slept ago later',
  doubtful:
    'these those both at in by only every my your his her our their within after before us them you the the_same for of until since',
};
