/** French as tables. What each role does to a number is said in roles.ts. */
import type { WordTable } from '../language.ts';

export const words: WordTable = {
  digit: 'zero=0 un=1 deux=2 trois=3 quatre=4 cinq=5 six=6 sept=7 huit=8 neuf=9',
  teen: 'dix=10 onze=11 douze=12 treize=13 quatorze=14 quinze=15 seize=16',
  tens: 'vingt=20 vingts=20 trente=30 quarante=40 cinquante=50 soixante=60 septante=70 huitante=80 octante=80 nonante=90',
  hundred: 'cent=100 cents=100',
  thousand: 'mille million millions milliard',
  point: 'virgule point',
  and: 'et',
  half: 'demi=50 demie=50 demis=50',
  quarter: 'quart=1 quarts=1',
  parts: 'dixieme=10 dixiemes=10 centieme=1 centiemes=1 cinquieme=20 cinquiemes=20 tiers huitieme huitiemes',
  article: 'un=1 une=1',
  unit: 'mm=0 millimetre=0 millimetres=0 milimetre=0 milimetres=0 milli_metres=0 m_m=0 cm=1 centimetre=1 centimetres=1 pouce=2 pouces=2 semaine=3 semaines=3 celsius=4 degres_celsius=4 points=5 degre=6 degres=6 °=6 gramme=7 grammes=7 millilitre=8 millilitres=8 ml=8',
  alien:
    'm s minute minutes min seconde secondes jour jours mois an ans annee annees pour_cent pourcent % € $ £ euro euros dollar dollars francs centimes livres kilo kilos kilogrammes kg litre litres metre metres km kilometres fois personne personnes patient patients patiente dent dents prothese protheses cuillere cuilleres mesures goutte gouttes piece pieces rendez_vous visite visites enfant enfants fm d_entre de_ces de_ceux de_plus de_la des autres autre petits petites grands grandes nouvelles points_de points_douloureux zones plaies choses questions mots doigts essais empreintes a_la_fois pour_cents',
  clock: 'moins_le heure heures h midi minuit',
  month:
    'janvier fevrier mars avril mai juin juillet aout septembre octobre novembre decembre lundi mardi mercredi jeudi vendredi samedi dimanche',
  ordinal: 'premier premiere deuxieme second troisieme quatrieme sixieme septieme er ere eme ieme',
  label:
    'mesure lecture numero essai prise valeur tentative passage salle fauteuil taille page chaine dent chambre etape ligne patient flacon tiroir lot chapitre teinte porte porte_empreinte etage bus',
  negative: 'moins negatif',
  range: 'ou a entre jusqu_a ou_bien contre ± soit',
  sided:
    'presque=1 a_peine=1 plus_de=1 moins_de=1 au_moins au_plus un_peu_plus_de un_peu_moins_de un_peu et_un_peu et_quelques et_des_poussieres pas_tout_a_fait=1 bien_plus=1 maximum minimum < > ≤ ≥ dites dis comptez compter agee age quasi=1 quasiment=1 pres_de=1 quelques tout_au_plus et_plus grand_maximum et_des',
  fix: 'non correction erreur je_veux_dire ou_plutot plutot non_attends attends attendez je_me_trompe je_me_suis_trompe je_me_suis_trompee trompe je_corrige corrige corrigez je_rectifie rectification efface_ca effacez_ca efface oublie_ca oubliez_ca annule_ca annule annulez enfin ah_non mais_non pardon=1 desole=1 desolee=1 excusez_moi=1 excuse_moi=1 en_fait=1 ou_mieux mieux change_ca changez_ca c_est_faux faux non_non oups zut je_me_corrige me_corrige c_est_a_dire_non erreur_de_ma_part mince je_voulais_dire voulais_dire un_instant une_seconde un_moment la_derniere_etait=1 le_dernier_etait=1 la_precedente_etait=1',
  not: 'pas jamais',
  copula:
    'est sont etait etaient fait font mesure mesurent indique affiche montre donne dit lis lit ai a_nous obtiens trouve trouvons vois voit c_est c_etait ca_fait ca_donne ce_sera ce_serait serait sera de_l_ordre_de autour_de aux_alentours_de environ exactement a_peu_pres plus_ou_moins on_est_a on_arrive_a est_a il_est_a arrive_a monte_a descend_a passe_a reste_a je_dirais disons mettons mets mettez met ecris ecrivez inscris inscrivez enregistre enregistrez note_bien notez j_ai on_a vaut atteint egale egal est_de soit_environ vers_les dirait on_dirait je_lis je_trouve je_vois je_crois je_pense elle_est_a nous_avons',
  pointing: 'cet ce chaque aucun autre l de',
  person: 'elle_a=1 il_a=1 elle_est=1 il_est=1 elle il ils elles je tu nous vous',
  plain:
    'le la les l d j qu c s n m t y de du des je tu il elle on nous vous ils me moi te toi lui leur se ce ca cela ceci mon ma mes ton son sa ses notre votre qui que quoi dont comme quand comment combien si oui ok okay d_accord bon bonne bien ben alors donc voila voyons ici maintenant encore toujours deja apres avant puis ensuite aujourd hui cette_fois cette ces nouveau nouvelle encore_une_fois repete pareil meme identique inchange stable exact precis precisement pile juste tout correct parfait super entendu merci s_il_vous_plait s_il_te_plait sil_vous_plait plait plaît crois pense suppose imagine dirais peut etre probablement surement certainement sans_doute semble parait devrait doit dire hum hmm ah oh eh bah tiens regarde regardez attention en dans sur sous par pour avec sans vers chez au aux haut bas gauche droit cote devant derriere arriere centre milieu moitie partie large largeur hauteur long longueur profondeur epaisseur distance ecart espace total somme resultat chiffre dernier prochain suivante precedent actuelle final mesure lecture valeur calibre pied coulisse reglette regle ecran echelle appareil instrument cadran pointe becs maxillaire mandibule mandibulaire superieur inferieur anterieur posterieur crete arcade palais nez menton levre bouche visage repos occlusion occlusal vertical dimension ferme ouvert jointes detendu coussinet trigone tuberosite vestibule langue joue max a_la_mandibule seulement rond net docteur monsieur madame mademoiselle rien aussi mais parce tres peu assez verifie confirme controle moyenne moyen reste note noter marque marquez prends prenez prise retenu retiens retenez lu ete vient venir va aller serre premier deuxieme troisieme quatrieme face niveau ligne a_present hein approximativement grosso modo ajoute voici ecoute ecoutez noté parfaitement compris attend doucement bord plus etroit d_une_fois au_plus_large au_plus_haut aiguille avons garde gardons garder rentre rentrer saisis saisir definitif definitive definitivement arrondi arrondissant approximatif estimation estime estimee trouve tombe tombons dossier fiche feuille memoire resultats finalement vraiment simplement juste_la apparemment effectivement complet complete entier entiere plein pleine diametre perimetre arc front frontal lateral median nasal labial commissure inchanges verifiee verification oeil chose peu_de_chose pres coller met mettre mis pose posee impeccable nickel voila_voila tous_les_deux chaque_cote deux_cotes deglutition avale endroit position fixe appuie appuye lache relache tenu tient maintien maintient place sommet fond extremite bout bouts interieur exterieur reference repere reperes centree mordant postere faut falloir ouais repetition celui_ci fois_ci jamais finit finir repondre reponse chiffres',
  talk: 'prix coute coutent paye payer telephone anniversaire petit_fils petite_fille fils fille mari femme grand_mere grand_pere mere pere chien chat rue train vol match buts but chaine radio chanson film vacances meteo cafe dejeuner demain hier etage eglise ecole poids pese fievre temperature page nee ne_en rendez age comptez_jusqu_a tante oncle voisin voisine ami amie patron collegue frere soeur niece neveu cousin cousine',
  doubtful:
    'les ces mes ses leurs vos tous toutes dans seulement salle fauteuil taille page chaine dent chambre etape ligne patient flacon tiroir lot chapitre teinte porte porte_empreinte etage numero bus des',
};
