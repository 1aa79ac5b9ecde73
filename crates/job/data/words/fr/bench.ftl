# French, from memory: not yet read by a native founder.

# The sand bench: cards, drying, mixes, tests, and the book of a heap.

## What stands on top

bench-card-head = { $name } : la fiche de ce sable
bench-water-head = l'eau du sable
bench-dry-head = séchage jusqu'à un poids
bench-stand-head = un moule serré laissé ouvert
bench-pucks-head = { $name }, d'après { $count } galettes
bench-mixes-head = mélanges : oddside sand recipe NOM en pèse un
bench-recipe-head = { $mix }
bench-tests-head = essais : oddside sand test NOM clé=valeur en calcule un
bench-test-head = essai : { $test }
bench-watch-head = { $test }, { $count } lectures
bench-pour-head = { $name }, coulée du { $day }
bench-state-head = { $name } après { $count } coulées
bench-rescue-head = remettre le tas en état

## Figures

bench-fineness = indice de finesse
bench-mean-grain = la moitié des grains est plus fine que
bench-openness = perméabilité s'il était propre et sec, environ
bench-uniformity = uniformité d60/d10
bench-sieves-with-a-tenth = tamis qui retiennent un dixième ou plus
bench-dust = poussière sous 75 µm
bench-suits = convient à
bench-suits-coarse = grosses pièces, fonte ; rugueux pour le petit aluminium
bench-suits-non-ferrous = aluminium, laiton et bronze
bench-suits-fine = sable de contact et travail fin ; il respire peu
bench-moisture-of-wet = humidité, de la masse humide
bench-moisture-of-dry = humidité, du sable sec
bench-moisture-off-by = à plus ou moins
bench-jar = couche fine du bocal, en volume
bench-washable = fines lavables, en masse
bench-burning-loss = perte au feu
bench-density = densité serrée
bench-voids = air entre les grains
bench-shape = forme des grains
bench-shape-rounded = arrondie : coule et respire bien, demande moins d'argile
bench-shape-sub-angular = semi-anguleuse : un bon milieu
bench-shape-angular = anguleuse : s'accroche bien, demande plus d'argile et de serrage
bench-shape-compound = composée : se défait en poussière à l'usage
bench-water-to-add = eau à ajouter
bench-water-each-spray = chacune des trois pulvérisations
bench-stop-weight = arrêter le séchage à
bench-water-to-lose = eau à perdre
bench-drying-rate = vitesse de séchage, kg/h m²
bench-surface = la surface mouillée se tient à
bench-drying-time = temps de séchage
bench-drying-own = temps de séchage d'après votre propre journal
bench-drying-book = le temps du livre, plus haut, est celui à écrire au journal : planned_drying=
bench-time-left = temps restant
bench-done-at = fini vers
bench-stands = tient au moins
bench-taken-up = eau reprise, de la masse sèche
bench-by = d'après
bench-by-line = la droite entre galettes
bench-by-curve = la courbe de sorption des galettes
bench-air-up-to = air jusqu'à
bench-mix = mélange
bench-part = partie
bench-sand = sable tel quel
bench-water-brought = eau apportée par le sable et le liant
bench-mix-in-all = le mélange en tout
bench-cost = coût de ce qui a un prix
bench-test = essai
bench-reading = lecture
bench-verdict = verdict
bench-squeeze-dry = trop sec, ou l'argile est morte
bench-squeeze-right = bon
bench-squeeze-wet = trop humide
bench-good-days = vos bons jours
bench-test-noise = un essai seul s'écarte de (écart type)
bench-limits = limites d'une lecture
bench-step-limits = limites d'un pas
bench-chart-readings = { $test } : lectures
bench-chart-means = { $test } : moyennes pondérées
bench-crust = croûte brûlée
bench-clay-burnt = tas plus chaud que ne supporte l'argile
bench-organic-share = tas plus chaud que ne supportent sucre et huile
bench-clay-killed = argile tuée
bench-organic-burnt = liant brûlé
bench-steam = eau partie en vapeur
bench-thrown-out = jeté
bench-top-up = argile pour revenir au départ
bench-pours-left = coulées semblables restantes
bench-holds-sand = sable
bench-holds-live-clay = argile active
bench-holds-dead-clay = argile morte
bench-holds-organic = liant organique
bench-holds-ash = cendre
bench-holds-core-sand = sable de noyaux
bench-holds-parting = poudre de séparation
bench-holds-fines = limon et grains cassés
bench-holds-water = eau
bench-of-dry = { $share } % du tas sec
bench-dead-share = matière morte
bench-dilution = sable et argile secs qui feraient autant
bench-out-and-in = sable usé à sortir, neuf à mettre
bench-clay-to-add = argile neuve à ajouter
bench-fines-after = fines lavables ensuite

## What to mind

bench-silica = la poussière de sable sec est de la silice, elle abîme les poumons : mouillez-la ou portez un masque à poussière fine (P100, FFP3), dehors ; ne balayez jamais à sec
bench-by-freezing = la chaleur dans le sable est celle qui a été suivie dans le moule de { $job }, jusqu'à son ouverture
bench-short-stack = des tamis manquants laissent la finesse incertaine : elle est dans l'intervalle
bench-one-size = grains presque d'une seule taille : ils se dilatent et cloquent ; on souhaite trois ou quatre tamis à un dixième
bench-wash-dust = beaucoup de poussière : lavez le sable dans quatre ou cinq eaux
bench-jar-volume = la couche est en volume et contient beaucoup d'eau : ce n'est pas un pourcentage d'argile en masse ; lavez et séchez un échantillon pour cela
bench-washable-all = ce qui part au lavage est argile active, argile morte et limon ensemble
bench-natural-temper = les sables naturels se moulent au mieux à 8 ou 9 % d'eau, bien plus que le sable à la bentonite : ne corrigez pas l'un par le chiffre de l'autre
bench-clay-loses = l'argile elle-même perd { $low } à { $high } % de sa masse au feu : ôtez-le avant d'accuser le liant
bench-larger-handful = cette balance dit trop peu sur une telle poignée : séchez { $mass } ou plus, ou prenez une balance plus fine
bench-three-sprays = ajoutez-la en trois fois, malaxez dix minutes, laissez une heure, pressez ; gardez le dernier tiers, l'eau ne se retire pas
bench-give-weather = donnez air (air) et humidité (humidity), et surface (area) ou épaisseur (layer), pour le temps
bench-weigh-to-narrow = avant toute pesée le temps est bon à un tiers près : donnez weighed et after à la prochaine pesée
bench-weigh-at = pesez de nouveau à { $time } : j'attends { $mass }
bench-weigh-in = pesez de nouveau dans { $minutes } min : j'attends { $mass }
bench-dry-enough = il est assez sec, ou trop : rentrez-le maintenant
bench-stand-least = l'eau qui remonte n'est pas comptée : il tient au moins autant ; couvrez-le pour gagner du temps
bench-cover-damp = un moule couvert ou fermé transpire : regardez sa face avant de couler, et n'en coulez pas un humide
bench-do-not-pour = ne coulez pas un moule ou un noyau à liant organique resté à { $at } : séchez-le ou recuisez-le d'abord
bench-never-so-dry = même l'air le plus sec de ces galettes en laisse plus
bench-within-sources = { $part } : { $here } du sable sec ; les sources d'ici prennent { $low } à { $high }
bench-outside-sources = { $part } : { $here } du sable sec est hors de toutes les sources d'ici, qui prennent { $low } à { $high } : faites un petit lot de chaque avant le tas
bench-part-left-out = { $part } est laissé de côté : parts.{ $part }=… le prend, en parties pour 100 de sable sec ; les sources ici prennent { $low } à { $high }
bench-test-batch = mélangez d'abord un kilogramme et faites-y la poignée, la chute et la bouteille
bench-no-good-days = aucun bon jour de cet essai dans le livre : entrez-en un avec --day JOUR --good quand le sable moule bien
bench-below-good-days = au-dessous de chacun de vos { $count } bons jours
bench-above-good-days = au-dessus de chacun de vos { $count } bons jours
bench-like-good-days = comme vos { $count } bons jours
bench-repeat-once = faites parfois l'essai deux fois sur un lot : sans répétition nul ne sait de combien un essai s'écarte
bench-test-coarse = cet essai varie presque autant que les lots : prenez la moyenne de trois
bench-few-readings = { $count } lectures, c'est peu : à moins de vingt les limites peuvent être fausses d'un tiers
bench-in-hand = rien ne parle d'un changement
bench-signal-beyond = { $day } : une lecture au-delà de trois écarts types
bench-signal-two-of-three = { $day } : deux sur trois au-delà de deux écarts types d'un côté
bench-signal-four-of-five = { $day } : quatre sur cinq au-delà d'un écart type d'un côté
bench-signal-eight = { $day } : huit de suite du même côté du milieu
bench-signal-six = { $day } : six de suite qui montent, ou qui descendent
bench-mean-beyond = { $day } : la moyenne pondérée a quitté ses limites, un petit changement qui dure
bench-step-beyond = { $day } : un pas plus grand que le hasard n'en fait
bench-passed-live-clay = trop peu d'argile active : ajoutez l'argile indiquée avant la prochaine coulée, et essayez
bench-passed-dead = trop de matière morte : remplacez une partie du tas par du sable neuf avant la prochaine coulée
bench-passed-organic = trop de liant non brûlé : il dégage du gaz ; mêlez du sable neuf avant la prochaine coulée
bench-soon-live-clay = dans { $count } coulées semblables il y aura trop peu d'argile active : complétez avant
bench-soon-dead = dans { $count } coulées semblables il y aura trop de matière morte : jetez la croûte, et une partie du tas
bench-soon-organic = dans { $count } coulées semblables il y aura trop de liant non brûlé : ajoutez-en moins
bench-lasts = aucune limite n'est passée en { $count } coulées semblables
bench-do-not-dilute = pas raisonnable : tant de sec fait un autre tas ; étalez et laissez partir l'eau
bench-dead-clay = beaucoup de fines et une poignée qui s'émiette, c'est de l'argile morte, pas assez d'argile
bench-gassy = une telle perte au feu fait du gaz : n'y mettez plus de liant
bench-short-sand = il manque { $mass } de sable neuf pour cela
bench-short-clay = il manque { $mass } d'argile neuve pour cela
bench-wash-first = lavez d'abord un échantillon : sans ses fines nul ne sait s'il est fatigué
bench-silicate-out = le sable de noyau au silicate gâte l'argile : tamisez les mottes et tenez-les hors du tas
bench-dull-pour = essayez de nouveau avant de couler, et que la première coulée soit sans enjeu
bench-step-dry = étalez et séchez jusqu'au poids d'arrêt
bench-step-sieve = tamisez les mottes de noyau et le métal
bench-step-crust = jetez d'abord la croûte brûlée, puis la part à échanger
bench-step-add = ajoutez le sable neuf, semez l'argile sur le sable humide
bench-step-mull = malaxez dix minutes ou plus, laissez reposer la nuit
bench-step-test = poignée, chute et bouteille ; notez-les dans le livre

## How tests are done

bench-how-sample = prenez du sable à trois endroits, mélangez, partagez jusqu'à un essai
bench-how-squeeze = pressez une poignée, ouvrez, cassez : felt=crumbles (s'émiette), sharp (empreintes, cassure nette) ou smears (colle)
bench-how-drop = pressez une motte, lâchez-la de plus en plus haut jusqu'à ce qu'elle casse : height='60 cm'
bench-how-dent = lâchez une bille sur la face serrée, moyenne de cinq empreintes : mass= ball= drop= dent=
bench-how-bottle = laissez une bouteille aspirer l'air à travers un bouchon serré à 10 cm d'eau : air= height= pressure='10 cmH2O' diameter= time=
bench-how-cylinder = serrez un tube de trois coups, poussez-le dehors, pressez sur une balance avec une plaque : load= diameter=
bench-how-bar = cuisez un barreau, posez-le sur deux arêtes, pressez au milieu sur une balance : load= span= breadth= height=
bench-how-disc = pressez un disque sur sa tranche jusqu'à ce qu'il se fende : load= diameter= height=
bench-how-compactability = remplissez au tamis un tube de 120 mm, arasez, trois coups : rammed='70 mm'
bench-how-moisture = pesez une poignée, séchez à 105 °C jusqu'à poids constant, pesez : wet= dry=

## Mulling, facing, and a sheet on paper

bench-mull-head = malaxage : l'argile travaillée sous pression
bench-facing-head = sable de contact
bench-sand-of-wet = humidité du sable tel quel, de sa masse humide
bench-mix-of-wet = humidité du mélange fini, de la masse humide
bench-mix-of-dry = la même, du mélange sec
bench-mull-by-hand = pelle et bottes, au sol
bench-mull-by-mixer = perceuse à palette, ou bétonnière
bench-mull-by-muller = malaxeur : roues ou palettes qui pressent
bench-facing-thick = épaisseur de la couche
bench-facing-volume = sable de contact en place, serré
bench-facing-laid = le même en masse
bench-facing-ready = sable de contact à préparer
bench-facing-open = la couche respire, de ce que respire le tas
bench-facing-both = couche et sable du tas ensemble, de ce que respire le tas
bench-mull-minutes = malaxage, d'usage : { $hand } à la pelle et aux bottes, { $mixer } à la perceuse ou bétonnière, { $muller } au malaxeur
bench-mull-on = malaxez encore : dix minutes ont donné { $gain }, plus que les { $sure } dont deux essais diffèrent de toute façon
bench-mull-enough = assez : dix minutes ont donné { $gain }, dans les { $sure } dont deux essais diffèrent de toute façon
bench-mull-common-practice = les minutes sont d'usage jusqu'à quelque 30 kg, sans source : votre propre essai dit quand arrêter
bench-mull-hands = ne mettez jamais la main ni la pelle dans une machine qui tourne : arrêtez-la et débranchez-la
bench-mull-step-dry = d'abord sable et argile sèche, le sable humide : deux minutes, jusqu'à plus aucun grumeau gris
bench-mull-step-water = puis l'eau en trois fois, au pulvérisateur, chacune travaillée avant la suivante ; le sirop avec la première
bench-mull-step-press = pressez et étalez, ne faites pas que remuer : piétinez et retournez, appuyez la pelle, ou laissez tourner les roues
bench-mull-step-test = essayez, malaxez dix minutes, essayez encore : oddside sand mull before= after= test=
bench-mull-step-rest = laissez reposer couvert, une heure au moins, mieux une nuit ; tamisez avant l'emploi
bench-facing-step-riddle = tamisez-le humide, jamais sec, sur le modèle jusqu'à le couvrir partout
bench-facing-step-press = tassez-le aux doigts à l'épaisseur ci-dessus, sans excès dans les coins
bench-facing-step-back = jetez aussitôt le sable du tas derrière et serrez, avant que la couche ne sèche
bench-facing-step-vent = tirez de l'air au fil à travers tas et couche, en s'arrêtant avant le modèle
bench-facing-finish = aucune loi publiée ne lie rugosité et grain : un ou deux tamis plus fin que le tas est d'usage
bench-facing-grain = donnez heap_grain= et facing_grain= de leurs fiches pour voir ce que la couche coûte en souffle
bench-facing-closes = grain pour grain, propre et serré pareil, il reste au moule { $left } de son souffle : couche mince, et tirez de l'air
bench-paper-amount = combien
bench-paper-made = pesé
bench-paper-mind = Attention
bench-paper-steps = Dans cet ordre
bench-paper-notes = Bon à savoir
bench-paper-blank-date = Date, qui
bench-paper-blank-start = Début, fin
bench-paper-blank-squeeze = Poignée
bench-paper-blank-drop = Chute, hauteur
bench-paper-blank-bottle = Bouteille, secondes
bench-paper-blank-seen = Ce qu'on a vu

## How well a test repeats

bench-test-difference = deux essais du même sable diffèrent plus qu'une fois sur vingt de
bench-test-share = l'essai, de tout ce qui varie dans votre livre
bench-test-people = les mains diffèrent de (écart type)
bench-test-kinds = sortes de sable que l'essai distingue
bench-people-studied = { $people } personnes ont essayé les mêmes gâchées : essai et mains font { $share } % de tout ce qui varie ; sous 10 c'est bon, jusqu'à 30 supportable
bench-people-uneven = plusieurs personnes ont essayé : que chacune essaie les mêmes gâchées, deux au moins, deux fois chacune le même jour, et ceci dira l'effet des mains

## Pictures

bench-sizes-title = { $name } : tailles des grains
bench-sizes-caption = ouvertures en mm, par facteurs ; en haut les numéros des tamis
bench-sizes-sieve = tamis
bench-sizes-kept = retenu sur chaque tamis
bench-sizes-finer = plus fin
bench-sizes-pan = fond
bench-chart-caption = tireté : limites ; un carré vide avec son jour parle d'un changement

## Read off at the heap

bench-felt-crumbles = il s'effrite
bench-felt-sharp = traces nettes des doigts, cassure franche
bench-felt-smears = il poisse
bench-key-fall = hauteur de chute
bench-key-ball-mass = masse de la bille
bench-key-ball = diamètre de la bille
bench-key-dent = diamètre de l'empreinte
bench-key-air = air écoulé
bench-key-plug = hauteur du bouchon
bench-key-pressure = pression
bench-key-diameter = diamètre
bench-key-time = durée
bench-key-load = charge à la rupture
bench-key-span = entre les appuis
bench-key-breadth = largeur
bench-key-upright = hauteur
bench-key-rammed = hauteur serrée
bench-key-wet = humide
bench-key-dry = sec
