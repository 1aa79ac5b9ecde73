# French, from memory: not yet read by a native founder.

# What is put into remarks and labels: reasons, elements, things done.

## Advice that several remarks share

proved-by-test = la faire étudier et éprouver selon les règles du métier autorisé et la réglementation locale
compare-the-volume = réparé ; comparer le volume avec celui du dessin
mend-before-printing = trop peu pour compter dans le métal ; réparer avant d'imprimer le modèle

## Solids of a part

solid-named = « { $name } »
solid-numbered = solide { $number }
the-part = la pièce

## Scrap by what it was, as in crates/metal/data/scrap.toml

scrap-radiator = soudé au plomb, ou sali de plomb ; vider le liquide, il est toxique et il crache
    .name = radiateur
scrap-house-radiator = la vieille peinture tient du plomb et les creux tiennent de l'eau : le casser et le décaper d'abord
    .name = radiateur de maison
scrap-piston = chasser axes et segments : ils sont en acier
    .name = piston
scrap-engine-block = le dégraisser ; chercher les goujons d'acier et les chambres d'eau bouchées
    .name = bloc moteur
scrap-wheel = ôter les masses d'équilibrage (plomb ou zinc), les valves et la peinture ; « mag » peut vouloir dire magnésium
    .name = jante
scrap-saw-housing = les carters légers sont souvent en magnésium : du vinaigre sur un coup de lime le dit
    .name = carter de scie
scrap-tap = au plomb pour se tourner bien, et chromé ; ouvrir tout creux fermé
    .name = robinet
scrap-door-handle = le placage et les vieilles pièces sous pression peuvent tenir du cadmium et du plomb
    .name = poignée de porte
scrap-pipe = couper les deux bouts avant de chauffer : un tube fermé éclate
    .name = tuyau
scrap-pan = les casseroles artisanales transmettent ce dont elles sont faites ; les revêtements antiadhésifs donnent des fumées toxiques
    .name = casserole
scrap-can = jusqu'à la moitié part en crasse ; le vernis fume ; les écraser sèches, jamais avec du liquide dedans
    .name = canette
scrap-brake-disc = la poussière de frein des vieilles voitures peut tenir de l'amiante : la laver à l'eau
    .name = disque de frein
scrap-bath = l'émail saute à chaud et peut tenir du plomb : le casser dehors d'abord
    .name = baignoire
scrap-propeller = les métaux de palier tiennent du plomb ; les outils sans étincelle et les ressorts peuvent tenir du béryllium : ne jamais les fondre
    .name = hélice
scrap-wire = le dénuder, ne jamais le brûler : la fumée de la gaine est toxique, les vieilles gaines sont en plomb
    .name = fil
scrap-battery = plomb : un creuset qui en a tenu ne sert plus à rien d'autre ; laisser les batteries fermées
    .name = batterie
scrap-mixed = personne ne sait ce qu'il y a dedans : essayer chaque morceau
    .name = mêlé

## What was mended in a mesh

points-joined = { $count } points voisins réunis
collapsed-dropped = { $count } facettes écrasées enlevées
doubles-dropped = { $count } facettes en double enlevées
needles-mended = { $count } facettes sans surface réparées
slits-zipped = { $count } fentes fermées
holes-closed = { $count } petits trous fermés
faces-closed = { $count } ouverture(s), dont des faces entières, fermées à plat
facets-turned = { $count } facettes retournées
shells-turned = { $count } peaux remises à l'endroit
flakes-dropped = { $count } lamelles sans épaisseur enlevées
crossings-joined = ce qui se chevauche ou se traverse réuni : volume { $before } avant, { $after } après

## Why a flask does not take the patterns

no-flasks = l'atelier n'a pas de châssis : écrire les vôtres dans shop.toml sous [[flask]]
flask-unknown = le châssis « { $flask } » n'est pas dans la liste de l'atelier ; il y a : { $known }
flask-too-small = le châssis « { $flask } » est trop petit pour { $count } modèle(s) avec { $wall } de sable aux parois : il faut à l'intérieur { $inside }, dessus { $cope }, dessous { $drag }
flasks-too-small = tous vos châssis sont trop petits pour { $count } modèle(s) avec { $wall } de sable aux parois : il faut à l'intérieur { $inside }, dessus { $cope }, dessous { $drag }

## Elements, by their symbols

element-C = carbone
element-Si = silicium
element-Mn = manganèse
element-P = phosphore
element-S = soufre
element-Cr = chrome
element-Fe = fer
element-Al = aluminium
element-Mg = magnésium
element-Cu = cuivre
element-Zn = zinc
element-Sn = étain
element-Pb = plomb
element-Ni = nickel
element-Ti = titane
element-Sb = antimoine
element-Cd = cadmium
element-Bi = bismuth
element-CE = carbone équivalent
