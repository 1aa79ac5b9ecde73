### Le journal de l'atelier.

log-entry-written = écrit : { $table } { $number }
log-entry-there = déjà là, laissé tel quel : { $table } { $number }
log-half-filled = { $table } { $number } est à moitié rempli : il manque { $keys } (oddside log change { $table } { $number } KEY=VALUE)
log-asked = { $table } { $number } : { $words }
log-sound = le fichier est sain : { $count } écritures
log-nothing-asked = rien ne se contredit
log-moved-in = { $file } : { $new } nouvelles écritures, { $there } déjà là
log-renumbered = { $table } { $was } porte ici le { $number } : son numéro était pris
log-written-files = { $count } fichiers écrits dans { $folder }
log-salvaged = sauvé : { $count } de { $table }
log-torn = une partie de { $table } est illisible ; la dernière sauvée porte le numéro { $number }
log-links-lost = { $count } liens vers des écritures perdues restent vides
log-head-lost = l'en-tête du fichier était perdu, il a été remis
log-newer = un oddside plus récent a écrit ce journal : ici il est seulement lu
log-head-half = à moitié rempli

## Ce qui est demandé

log-asks-poured-before-melted = coulé avant que le métal soit fondu : laquelle des deux heures est juste ?
log-asks-poured-before-closed = coulé avant la fermeture du moule : laquelle des deux heures est juste ?
log-asks-opened-before-poured = le moule a été ouvert avant d'être coulé : laquelle des deux heures est juste ?
log-asks-closed-before-rammed = fermé avant d'être serré : laquelle des deux heures est juste ?
log-asks-heavier-than-charge = cette pièce pèse plus que toute la charge de sa fusion : repeser, ou voir la charge
log-asks-castings-heavier-than-pour = ses pièces pèsent ensemble plus que ce qui a été coulé : repeser
log-asks-more-out-than-in = il est sorti de cette fusion plus de métal qu'il n'en est entré : repeser
log-asks-another-metal = le moule était prévu pour un autre métal que celui de la fusion : est-ce le bon moule ?
log-asks-which-degrees = plus de 250 K d'écart avec le plan : lu en Fahrenheit ?
log-asks-mould-poured-twice = ce moule a déjà été coulé : est-ce le bon moule ?
log-asks-contraction = retrait de plus de 5 %, ou gonflement : est-ce la même cote sur le modèle et sur la pièce ?
log-asks-good-with-defect = bonne, et avec un grand défaut : est-elle bonne pour son usage ?
log-asks-humidity = l'humidité de l'air est entre 0 et 100 %
log-asks-moisture = aucun sable de moulage n'a cette humidité : entre 0 et 25 % de la masse humide
log-asks-below-nought = une masse, une longueur ou un temps est au-dessous de zéro
