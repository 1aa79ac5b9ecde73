# What is typed in a job's file, as the sheet calls it.

key-name = nom de la pièce
key-date = jour de la coulée
key-alloy = alliage
key-count = pièces par moule
key-serves = à quoi elle sert
key-form = forme de la charge
key-loss = perte à la fusion
key-pig = gardé pour la lingotière
key-flask = châssis
key-unit = unité du maillage
key-up = quel côté est en haut
key-from = ce que représente le maillage
key-contraction = votre propre retrait
key-machined = des faces sont usinées
key-rapped = le modèle est bien ébranlé
key-printed = imprimé par couches de
key-joint = hauteur du joint
key-sprue = place de la descente
key-gates = places des attaques
key-feeders = places des masselottes
key-pour-height = hauteur du joint au godet

## The words that may be chosen

said-ornament = à regarder
said-machine = dans une machine
said-food = pour manger ou boire
said-pressure = tient une pression
said-lifting = lève, ou porte une personne
said-brake = freine
said-ingot = lingot, retours propres
said-heavy = pièces cassées
said-thin = tôle, peinte ou grasse
said-swarf = tournures, limaille
said-cans = canettes
said-part = la pièce telle qu'on la veut
said-worn-original = un original usé

## The shop

key-units = unités qui viennent d'abord
key-words = langue, et mots britanniques ou américains
key-furnace = sorte de four
key-heap-mass = sable dans le tas
key-heap-bond = ce qui le lie
key-heap-moisture = son humidité
said-metric = kg et mm
said-inch = lb et pouces
said-uk = anglais, mots britanniques
said-us = anglais, mots américains
said-fr = français
said-es = espagnol
said-bentonite = bentonite
said-natural = sa propre argile
said-oil = huile
said-fuel-crucible = creuset au gaz, au fioul ou au charbon de bois
said-electric-crucible = creuset électrique
said-induction = induction
said-cupola = cubilot

## What is typed of a sand and a heap

bench-test-sand = Le sable
bench-test-moisture = Une poignée, pesée humide puis séchée
bench-test-jar = Agité dans un bocal d'eau et décanté
bench-test-wash = Lavé jusqu'à l'eau claire
bench-test-burning = Brûlé au rouge vif
bench-test-tin = Une boîte de volume connu, pleine et serrée
bench-test-heap = Tel que son livre commence
bench-given-name = nom
bench-given-shape = grains à la loupe
bench-given-clay = l'argile qui le lie
bench-given-wet = humide
bench-given-dry = séchée
bench-given-step = la balance distingue
bench-given-fine = la couche fine du dessus
bench-given-all = tout ce qui s'est déposé
bench-given-dried = séché, avant
bench-given-washed = lavé et séché
bench-given-burnt = après
bench-given-volume = ce que contient la boîte
bench-given-holds = le sable dedans, arasé
bench-given-moisture = humidité de ce sable
bench-given-sand = le sable tel qu'il est
bench-given-now = humidité maintenant
bench-given-wanted = humidité voulue
bench-given-tub = le sable dans le bac
bench-given-air = température de l'air
bench-given-humidity = humidité de l'air
bench-given-wind = vent
bench-given-sun = soleil en W/m², 0 à l'ombre
bench-given-area = surface du plateau
bench-given-layer = épaisseur de la couche
bench-given-weighed = le bac, pesé de nouveau
bench-given-after = après
bench-given-least = humidité minimale de sa peau
bench-given-dry_sand = sable sec
bench-given-mix = ou tout le mélange
bench-given-flasks = ou pour ces châssis
said-rounded = ronds
said-sub-angular = arêtes usées
said-angular = arêtes vives
said-compound = grains collés
said-sodium-bentonite = bentonite sodique
said-calcium-bentonite = bentonite calcique
said-other = argile réfractaire ou argile brute

## A part that is described

shape-sizes = cinq cotes
shape-box = parallélépipède
shape-cylinder = barre ronde ou disque
shape-tube = tube
shape-cone = cône
shape-ball = boule
shape-ellipsoid = ellipsoïde
shape-ring = anneau
shape-block = bloc
shape-disc = disque
shape-plate = plaque
shape-frame = cadre
shape-shell = coque
shape-any = rien de tout cela
size-length = longueur
size-width = largeur
size-height = hauteur, debout
size-thickest = section la plus épaisse
size-thinnest = paroi la plus mince
size-diameter = diamètre
size-bore = alésage
size-top = diamètre du sommet
size-thickness = épaisseur de la barre
