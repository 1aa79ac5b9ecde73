# French, from memory: not yet read by a native founder.

# What stands on paper: pour sheet, pour card, cut templates. A label at the left of a row
# has some 14 letters before it is broken into two lines.

## On every paper

date = Date
# Under which conditions any figure here may be used.
limits = Lois et sources : workings.pdf. Tables, calculs et modèles ; fourchettes sans garantie. D'abord les règles locales et du métier. Levage, freins, pression : à éprouver.
# Printed at the foot of each paper and at the end of each plan in a language that no founder who was
# brought up in it has read. Nobody needs it in English.
unread = Traduction pas encore relue par un fondeur de langue française.
# Printed at the head of what is shown in English to readers of another language.
in-english = Cette page est en anglais d'un bout à l'autre : les lois ne sont décrites qu'en anglais. (pas encore relu par un fondeur de langue française)
between = { $low } à { $high }
paper-title = { $paper } : { $job }
check-bar-upper = Contrôler à la règle : la barre du haut fait 100 mm,
check-bar-lower = celle du bas 4 pouces.

## The pour sheet

sheet-title = Fiche de coulée
sheet-stop = STOP : ne pas couler cette pièce en l'état
sheet-red-lines = Lignes rouges : cocher chacune avant de fondre
sheet-sources = Sources :
sheet-code = La carte d'atelier de cette feuille, ou ses chiffres, pour un téléphone.
level-stop = Stop
level-caution = Attention
level-note = À noter
remarks-more = et { $count } de plus : oddside plan { $count ->
    [one] la dit
   *[other] les dit
}.
remarks-left-off = { $count ->
    [one] { $count } remarque : oddside plan la dit
   *[other] { $count } remarques : oddside plan les dit
}.

red-line-dry = Moule, noyaux, outils, lingotière secs et chauds
red-line-floor = Sol de sable sec ; chemin libre jusqu'au moule
red-line-clothes = Bottes de cuir, visière, pas de synthétique
red-line-fume = Dehors ou sous hotte ; masque ; jamais seul
red-line-onlookers = Spectateurs à 2 m au moins ; un mot d'arrêt
red-line-quartz = Sable humide ou masque : danger du quartz

blank-sand = État du sable
blank-heat = Température ou signe
blank-seconds = Secondes
blank-weather = Temps qu'il fait
blank-happened = Ce qui s'est passé
blank-photo = Numéro de photo

block-metal = Métal et charge
block-sand = Sable et châssis
block-pattern = Modèle
block-mould = Moule et coulée
block-weights = Poids sur le dessus
block-pour = Couler

row-metal = Métal
row-one-casting = Une pièce
row-each-casting = Chaque pièce
row-charge = Charge
row-crucible = Creuset
row-flask = Châssis
row-sand = Sable prêt
row-larger = Plus grand de
row-longest = Côté maxi
row-modulus = Module massif
row-sprue-foot = Desc. pied Ø
row-cut-with = taillée avec
row-sprue-top = Desc. tête Ø
row-runner = Canal, tout
row-gates = Attaques, tout
row-feeder-diameter = Masselotte Ø
row-feeder = Masselotte
row-lay-on = Poser
row-irons = Prendre
row-pour-at = Couler à
row-fill-in = Remplir en
row-open-after = Ouvrir après

note-poured = { $poured } coulés en tout
note-rammed = dont { $sand } serrés dans le châssis
note-frozen = { $time } jusqu'à ce qu'il soit figé
note-feeder = aussi haute que large, sur la section la plus massive
note-lift = { $lift } de poussée, { $cope } de dessus
note-nothing-to-lay = le dessus est assez lourd ; une bride si on le déplace ; { $lift } de poussée, { $cope } de dessus
note-opening = { $alone } sans y toucher, { $handled } avant de prendre en main
note-or = ou { $pipe }
nothing = rien

drawing-caption = { $count ->
    [one] Modèle
   *[other] { $count } modèles
} dans le châssis comme dessiné ; à vous de placer descente, canal, masselotte.
drawing-rigged = { $count ->
    [one] Le modèle est posé
   *[other] { $count } modèles sont posés
} comme dessiné ; le système de coulée est placé par règle, { drawing-moved }. D descente, C canal, A attaque, M masselotte, N noyau ; les traits interrompus sont hors de la coupe.
drawing-moved = [mould.place] dans job.toml en déplace ce qu'on veut
    .sheet = tirez attaques et masselottes sur le plan pour les déplacer
letter-sprue = D
letter-runner = C
letter-gate = A
letter-feeder = M
letter-core = N
drawing-wanders = Là où le joint quitte son niveau, le sable du dessous est hachuré ; les courbes de niveau du plan sont espacées de { $every }.
drawing-scale = Échelle { $scale } ; en mm.
drawing-plan = Plan
drawing-section = Coupe
drawing-cope = dessus { $mm }
drawing-drag = dessous { $mm }
drawing-pour = coulée { $mm }

## The pour card

card-title = Carte de coulée
card-stop-word = Mot d'arrêt
card-stop-default = STOP
card-stop-told = tout le monde s'immobilise ; celui qui coule pose le métal ou finit dans la lingotière.
card-dry = Sec et chaud, coché par son nom avant l'impression de cette carte
card-crew = Équipe
card-path = Chemin, parcouru une fois avec un creuset vide
card-order = Ordre : d'abord ce qui demande le métal le plus chaud
card-mould = moule
card-on-the-cope = sur le dessus
card-metal-by-then = métal alors à
card-not-below = pas sous
card-takes = prend
card-fill-in = remplir en
card-loses = Le métal perd par calcul { $drop } d'un moule au suivant : le mesurer. Plus froid que « pas sous », un moule attend la fusion suivante.
card-next-heat = Fusion suivante : { $moulds }.
card-aloud = Dit à voix haute avant d'ouvrir le four
card-foot = Chiffres d'après des tables et des calculs à la main ; règlements locaux et métier autorisé passent avant. Nettoyer et sécher de nouveau après chaque coulée.

rule-clothes = Bottes de cuir sous le pantalon, visière, tablier de cuir, pas de synthétique.
rule-onlookers = Les spectateurs restent à 2 m et derrière celui qui coule. Personne ne traverse le chemin.
rule-steady = Couler sans à-coups, bassin plein. Un moule commencé est rempli, ou abandonné pour de bon.
rule-rest = Ce qui reste, et le métal devenu trop froid, va tout de suite dans les lingotières chaudes.
rule-floor = Métal au sol : du sable sec dessus, jamais d'eau. Reculer, ne pas courir.
rule-burn = Brûlure : eau fraîche sur la peau 20 min, loin du métal, et appeler les secours.

dry-floor = Sol : sable sec sous le chemin et le moule, pas de béton nu, pas de flaque
dry-ladle = Poche et bec : chauffés au rouge, pas seulement secs à l'œil
dry-tongs = Pince et brancard : chauds, sans rouille écaillée, sans chiffon humide
dry-skimmer = Écrémoir, plongeur, brasseur : chauds avant de toucher le métal
dry-ingot-moulds = Lingotières : chauffées et enduites, prêtes pour le reste
dry-crucible = Creuset : chauffé à cœur, sans fêlure, gardé au sec
dry-charge = Charge : sèche, chaude, sans tube fermé, rien d'humide ajouté après
dry-flux = Flux et additions : d'une boîte sèche, chauffés
dry-mould = Moule : à point ou séché, évents ouverts, pas resté sous la pluie
dry-cores = Noyaux : cuits ou gazés, gardés au sec, évent à l'air ; ou il n'y en a pas

## Cut templates

cut-title = Gabarits
cut-told = Grandeur nature, comme le métal. Imprimer à 100 %, sans ajuster à la page, et contrôler les deux barres du bas avant de couper. Ce sont les sections qui comptent : un canal d'une autre forme et de même section coule aussi bien.
cut-larger = Plus grand que le papier, à tracer à la règle et au compas : { $pieces }.
cut-picture = Gabarits en grandeur nature avec leurs cotes.
cut-sprue-peg = descente, de côté
cut-sprue-foot = pied de la descente
cut-sprue-top = tête de la descente
cut-runner = canal, en travers
cut-gates = { $count ->
    [one] attaque, en travers
   *[other] chacune des { $count } attaques, en travers
}
cut-feeder = masselotte
cut-peg-sizes = Ø { $thick } à Ø { $thin }, long { $long }
cut-round-sizes = Ø { $across }
cut-channel-sizes = large { $wide }, haut { $high }
joint-title = Le joint du moule
joint-told = Tailler le sable du dessous selon cette ligne et ces hauteurs avant de serrer le dessus. Hauteurs en mm au-dessus (+) ou au-dessous (−) du bord du châssis ; positions en mm depuis son coin intérieur avant gauche.
joint-picture = La ligne de joint vue de dessus avec ses courbes de niveau, la même ligne développée et un tableau de hauteurs.
joint-from-above = Autour de la première pièce, vue de dessus.
joint-straight = Les lignes qui quittent le niveau, développées depuis leur plus petit numéro.
joint-table = position : le long du châssis, en travers, hauteur
row-solved = Solide, par sa chaleur
note-solved = assez froid pour ouvrir après { $open }
