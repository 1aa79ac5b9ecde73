# French, from memory: not yet read by a native founder.

# The plan: names of figures, of what is chosen and of metals, in the order of the day.
#
# The English name of a figure is also its key in plan.json and for `oddside why`: it is changed in
# no language without the other.

# What a founder typed, and messages one after the other.
typed = { $words }
list = { $each }

## Figures

figure-part-volume = volume de la pièce
figure-casting-mass = masse de la pièce
figure-contraction = retrait
figure-pattern-length = longueur du modèle
figure-pattern-length-rapped = longueur du modèle, ébranlé
figure-tolerance-on-the-longest-size = tolérance sur la plus grande cote
figure-machining-stock-below-or-at-the-side = surépaisseur d'usinage dessous ou de côté
figure-machining-stock-under-the-cope = surépaisseur d'usinage sous le dessus
figure-draught-on-the-deepest-wall = dépouille sur la paroi la plus profonde
figure-casting-from-the-original-as-it-is = pièce d'après l'original tel quel
figure-laid-on-each-end-of-the-original = à ajouter à chaque bout de l'original
figure-master-length = longueur du modèle mère
figure-modulus-of-the-heaviest-section = module de la section la plus massive
figure-modulus-of-the-thinnest-section = module de la section la plus mince
figure-pouring-temperature = température de coulée
figure-freezing-time-of-the-heaviest-section = temps de solidification, section massive
figure-shrinkage-to-be-fed = retrait à nourrir
figure-feeder-diameter = diamètre de la masselotte
figure-feeder-diameter-by-modulus = diamètre de la masselotte par le module
figure-feeder-diameter-by-volume = diamètre de la masselotte par le volume
figure-neck-across = col de la masselotte
figure-fill-time = temps de remplissage
figure-effective-head = hauteur de charge effective
figure-choke-area = section d'étranglement
figure-sprue-foot-diameter = diamètre au pied de la descente
figure-sprue-top-diameter = diamètre en tête de la descente
figure-runner-area = section du canal
figure-gate-area = section des attaques
figure-gate-speed = vitesse à l'attaque
figure-last-casting-full-after-the-first = dernière pièce pleine après la première
figure-poured-each-second = coulé par seconde
figure-slag-trap-volume = volume du piège à crasses
figure-run-off-past-the-last-gate = canal au-delà de la dernière attaque
figure-metal-in-the-running-system = métal dans le système de coulée
figure-poured-mass = masse coulée
figure-charge = charge
figure-melt-loss = perte au feu
figure-tongs-load = charge sur la pince
figure-lift-out-temperature = température à la sortie du four
figure-fuel = combustible
figure-inoculant = inoculant
figure-wanted-carbon-equivalent = carbone équivalent voulu
figure-phosphor-copper = cuivre phosphoreux
figure-zinc-to-put-back = zinc à rajouter
figure-sand-to-fill-the-flask = sable pour remplir le châssis
figure-sand-to-have-ready = sable à tenir prêt
figure-cope-lift = poussée sur le dessus
figure-cope-mass = masse du dessus
figure-weight-on-the-cope = poids sur le dessus
figure-force-on-each-of-four-clamps = force sur chacune de quatre brides
figure-core-float = poussée sur les noyaux
figure-core-float-core-weightless = poussée sur les noyaux, noyau sans poids
figure-core-print-pressure = pression sur la portée
figure-heavier-half-of-the-flask = moitié lourde du châssis
figure-leave-alone-until = ne pas toucher avant
figure-may-be-opened = peut être ouvert
figure-may-be-handled = peut être pris en main

## What is chosen

choice-flask = châssis
choice-sprue-drill = mèche pour la descente
choice-sprue-pipe = tube pour la descente
choice-feeder = masselotte
choice-charge-from-heaps = charge prise aux tas
choice-crucible = creuset
choice-irons = poids
choice-lifted-by = levé par
choice-ram-to-a-dent-of = serrer jusqu'à une empreinte de
choice-vents = évents

## What is chosen, and why

chosen-flask = { $flask }: { $inside }, dessus { $cope }, dessous { $drag }
flask-to-be-made = à faire
reason-flask-wall = au moins { $wall } de sable autour du modèle
reason-flask-asked = demandé par son nom ; moins de sable qu'il n'en faut
reason-flask-no-list = aucun châssis dans shop.toml
reason-flask-none = aucun des vôtres ne prend le modèle
cutter-drill = mèche de { $size }
cutter-copper-tube = tube de cuivre de { $size }
cutter-steel-pipe = tube d'acier { $size } (ext. { $outside })
reason-cutter = { $off } de la section voulue
chosen-feeder-none = aucune
chosen-feeder-each = une sur chaque pièce, sur sa section la plus massive
reason-feeder-thin = chaque section est assez mince pour être nourrie par son attaque
reason-feeder-firm = une fonte de ce carbone gonfle ; moule montré ferme par : { $shown }
reason-feeder-volume = fixée par le volume : elle ne doit pas se vider ; aussi haute que large
reason-feeder-freezing = fixée par la solidification : elle doit se figer la dernière ; aussi haute que large
chosen-crucible-none = aucun des vôtres
reason-crucible = tient { $mass } à { $fill } de son bord
reason-crucible-none = la charge dépasse ce que tient n'importe lequel
chosen-irons-none = aucun : le dessus est assez lourd
chosen-irons-short = vous n'en avez pas assez
reason-irons-none = au haut de la fourchette de la poussée
reason-irons-together = { $mass } ensemble
reason-irons-clamp = brider avec la même force
chosen-one-person = une personne
chosen-two-people = deux personnes
chosen-three-people = trois personnes
chosen-nobody = personne à la main
reason-lifting = repère à l'établi : { $one } à un, { $two } à deux ; les règlements locaux priment
chosen-dent = { $aim } (pas plus large que { $soft }, pas moins de { $hard })
reason-dent = bille de { $ball } lâchée de { $height } ; un bon jour, votre { $metal } a donné { $dent }
chosen-vents = { $number } au fil de 2 mm, répartis sur les pièces, arrêtés à 12 mm d'elles
chosen-vents-none = aucun : le sable est assez ouvert
chosen-vents-too-few = aucun nombre d'évents au fil ne suffit
chosen-vents-habit = au fil de 2 mm, tous les 30 mm, arrêtés à 12 mm du modèle
reason-vents-gas = au crayon : gaz de ce sable contre la hauteur de métal
reason-vents-open = sécher ou ouvrir le sable, ou laisser des masselottes ouvertes en haut
reason-vents-habit = habitude : perméabilité et humidité du tas ne sont pas toutes deux connues

## What sets the filling time

fill-because = pas sous le bas de la fourchette : { $low } ; pas au-dessus du haut : { $high }
fill-quick-rule = plus vite arrache le sable (règle des parois minces)
fill-slow-rule = plus lent laisse le métal prendre peau (règle des parois fortes)
fill-thin-wall = la paroi la plus mince se figerait avant d'être pleine

## Metals

alloy-al-99-5 = Al 99.5
alloy-al-si12 = Al-Si12
alloy-al-si6-cu4 = Al-Si6-Cu4
alloy-al-si7-mg = Al-Si7-Mg
alloy-al-wrought-scrap = Al corroyé, ferraille
alloy-aluminium-bronze = Bronze d'aluminium
alloy-grey-iron = Fonte grise
alloy-gunmetal-85-5-5-5 = Bronze 85-5-5-5
alloy-pewter-92-7-5-0-5 = Étain 92-7.5-0.5
alloy-silicon-brass = Laiton au silicium
alloy-silicon-bronze = Bronze au silicium
alloy-tin-bronze-88-10-2 = Bronze d'étain 88-10-2
alloy-yellow-brass = Laiton jaune
alloy-za-12 = ZA-12
alloy-za-27 = ZA-27
alloy-za-8 = ZA-8
alloy-zamak-3 = Zamak 3
