# What is seen on castings, and what entries of the log are called.

## What is seen

sight-look-round-holes = trous ronds
sight-look-many-small-holes = beaucoup de petits trous
sight-look-ragged-hole = un trou aux parois déchirées
sight-look-sponge = métal spongieux
sight-look-sink = un creux en surface
sight-look-seam = une ligne où deux jets se sont rencontrés
sight-look-unfilled = métal manquant, bords ronds
sight-look-broken-edge = métal manquant, bords vifs
sight-look-drained = une coquille, ou un haut vide
sight-look-fin = une bavure mince
sight-look-veins = de fines bavures dans les coins ou du côté des noyaux
sight-look-bulge = une face gonflée
sight-look-lump = une bosse rugueuse de métal en trop
sight-look-crack = une fissure ou une déchirure
sight-look-rough = une peau rugueuse
sight-look-sand-keyed = du sable qui ne se détache pas
sight-look-sand-in-metal = du sable dans le métal
sight-look-dross-in-metal = des crasses, du laitier ou des peaux dans le métal
sight-look-scab = du métal sur une couche de sable
sight-look-groove = une ligne ou une rainure peu profonde
sight-look-drag-marks = des rayures dans le sens du démoulage
sight-look-offset = des moitiés qui ne se rejoignent pas
sight-look-wall-uneven = une paroi noyautée épaisse ici et mince là
sight-look-wrong-size = des cotes fausses partout
sight-look-hard-edge = des bords que la lime n'entame pas

## Where

sight-place-cope-face = sur le dessus
sight-place-drag-face = en dessous
sight-place-side-wall = sur un côté
sight-place-joint = au plan de joint
sight-place-at-gate = près d'une attaque
sight-place-opposite-gate = là où le jet a frappé
sight-place-far-from-gate = là où le métal est arrivé en dernier
sight-place-heavy-section = dans une partie massive
sight-place-thin-section = dans une partie mince
sight-place-inner-corner = dans un angle rentrant
sight-place-edge = sur une arête
sight-place-at-core = près d'un noyau
sight-place-at-insert = près d'un refroidisseur, d'un support ou d'un insert
sight-place-under-feeder = sous une masselotte
sight-place-large-flat = sur une grande surface plane
sight-place-low-down = au fond du moule
sight-place-between-arms = entre des bras retenus
sight-place-everywhere = partout
sight-place-inside = sous la peau

## The wall of a hole, or the skin of the fault

sight-wall-smooth = lisse
sight-wall-shiny = lisse et brillante
sight-wall-dendritic = couverte d'aiguilles
sight-wall-oxidised = sombre ou colorée par la chaleur
sight-wall-bright = claire, comme une cassure fraîche
sight-wall-sand-lined = avec du sable
sight-wall-dross-lined = avec des crasses ou du laitier
sight-wall-round-edged = aux bords ronds
sight-wall-sharp-edged = aux bords vifs
sight-wall-rough = rugueuse

## How large

sight-size-small = moins de 1 mm
sight-size-medium = 1 à 5 mm
sight-size-large = plus de 5 mm

## When it was seen

sight-when-knock-out = au décochage
sight-when-cleaning = au nettoyage
sight-when-machining = à l'usinage
sight-when-sawing = au sciage
sight-when-use = à l'usage

## What an entry of the log says

log-key-poured = coulé le
log-key-temperature = température de coulée
log-key-time = temps de remplissage
log-key-mass = masse
log-key-freezing = section la plus massive solide après
log-key-opening = décoché après
log-key-how = déroulement
log-key-note = note
log-key-mark = marque
log-key-good = bonne
log-key-use = à quoi elle sert
log-key-moisture = humidité du sable
log-key-ramming = serrage
log-key-vents = tirages d'air
log-key-feeder = masselottes
log-key-core = noyaux
log-key-weights = charge sur le châssis
log-key-charge = chargé
log-key-fuel = combustible brûlé
log-key-melted = tout liquide à
log-key-molten = tenu liquide pendant
log-key-scrap = la charge
log-key-degassed = dégazé
log-key-skimmed = écrémé
log-key-left = reste
log-key-look = ce qu'on voit
log-key-place = où
log-key-surface = paroi ou peau
log-key-size = taille
log-key-seen = quand on l'a vu

## Words of the log

log-word-soft = mou
log-word-even = régulier
log-word-hard = dur
log-word-none = aucun
log-word-few = peu
log-word-many = beaucoup
log-word-small = petites
log-word-enough = suffisantes
log-word-well-baked = bien cuits
log-word-baked-short = trop peu cuits
log-word-damp = humide
log-word-unvented = sans évent
log-word-steady = sans arrêt
log-word-broken = interrompue
log-word-splashed = éclaboussée
log-word-slow = lente, descente non pleine
log-word-ran-short = métal insuffisant
log-word-clean = propre
log-word-dirty = sale

## What may be said of a defect

sight-look = ce qu'on voit
sight-place = où
sight-surface = paroi ou peau
sight-size = taille
sight-when = quand on l'a vu
sight-castings = sur combien de pièces
sight-metal = métal

sight-castings-one = une
sight-castings-some = quelques-unes
sight-castings-all = toutes

sight-metal-aluminium = aluminium
sight-metal-zinc = zinc
sight-metal-pewter = étain
sight-metal-brass = laiton
sight-metal-bronze = bronze
sight-metal-copper = cuivre
sight-metal-iron = fonte
