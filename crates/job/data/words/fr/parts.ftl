# French, from memory: not yet read by a native founder.

# What is put into remarks and labels: reasons, elements, things done.

## Advice that several remarks share

proved-by-test = la faire étudier et éprouver selon les règles du métier autorisé et la réglementation locale
compare-the-volume = réparé ; comparer le volume avec celui du dessin
mend-before-printing = trop peu pour compter dans le métal ; réparer avant d'imprimer le modèle

## What was mended in a mesh

points-joined = { $count } points voisins réunis
collapsed-dropped = { $count } facettes écrasées enlevées
doubles-dropped = { $count } facettes en double enlevées
needles-mended = { $count } facettes sans surface réparées
slits-zipped = { $count } fentes fermées
holes-closed = { $count } petits trous fermés
facets-turned = { $count } facettes retournées
shells-turned = { $count } peaux remises à l'endroit
flakes-dropped = { $count } lamelles sans épaisseur enlevées

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
