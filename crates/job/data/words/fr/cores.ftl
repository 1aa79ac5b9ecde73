# Les noyaux en volumes : ce qui est fait, et ce qui reste au fondeur.

cores-none = rien dans cette pièce n'a besoin d'un noyau quand elle est démoulée dans ce sens
core-made = noyau { $name } : { $volume } de sable à noyau, { $mass }, portées comprises, autour de { $place }
core-prints = noyau { $name } : { $count } portées, longues de { $lengths }, aussi longues que larges jusqu'à 3 in ; le modèle les reçoit avec 0,4 mm de jeu
core-prints-by-sand = noyau { $name } : { $count } portées, longues de { $lengths }, pour que ce sable porte trois fois le noyau ; le modèle les reçoit avec 0,4 mm de jeu
core-prints-by-job = noyau { $name } : { $count } portées, longues de { $lengths } comme le dit le travail ; le modèle les reçoit avec 0,4 mm de jeu
core-one-print = le noyau { $name } n'est tenu qu'à un bout, par une portée de { $length } : l'allonger jusqu'à ce qu'elle pèse plus que le noyau, ou poser des supports
core-box-halves = noyau { $name } : boîte en deux moitiés, dessous { $lower }, dessus { $upper }, côtés ouverts pour serrer : { $open }
core-box-stepped = noyau { $name } : boîte en deux moitiés à joint en gradin, dessous { $lower }, dessus { $upper }, côtés ouverts pour serrer : { $open }
core-box-slides = noyau { $name } : la boîte a { $count ->
    [one] un tiroir
   *[other] { $count } tiroirs
}, à tirer à plat avant de lever les moitiés, selon { $ways } ; les poncer jusqu'à ce qu'ils coulissent bien, et repérer la place de chacun
core-box-none = noyau { $name } : aucune boîte en deux moitiés ne le lâche, avec ou sans tiroirs, { $held } restent pris vers { $place } : faire le noyau en deux parties et les coller
core-box-none-sought = noyau { $name } : aucune boîte en deux moitiés ne le lâche, et il est trop finement taillé pour y chercher des tiroirs ; { $held } restent pris vers { $place } : faire le noyau en deux parties et les coller
core-box-fails = noyau { $name } : sa boîte n'a pas pu être taillée : { $why }
core-vent-straight = noyau { $name } : le percer d'un fil droit, long de { $length } et pas plus épais que { $across }, d'une portée à l'autre
core-vent-bent = noyau { $name } : son évent est courbe : serrer dans le milieu un cordon de cire long de { $length } et pas plus épais que { $across }, et le faire fondre
core-vent-none = noyau { $name } : trop mince pour un évent au milieu : prendre un sable ouvert et éventer ses portées
core-left = { $volume } de sable autour de { $place } retiennent le modèle : { $remedy } ; { $why }
hollows-small = { $count ->
    [one] un petit endroit retient
   *[other] { $count } petits endroits retiennent
} { $volume } de sable : les combler ou les arrondir sur le modèle
remedy-loose-piece = faire de cette partie du modèle une pièce démontable
remedy-core = y mettre un noyau
remedy-drawback = armer ce bloc de sable d'une plaque et le tirer de côté
remedy-turn = démouler la pièce dans un autre sens
hollow-opens-sideways = il s'ouvre d'un côté et il est peu profond
hollow-opens-long = il s'ouvre d'un côté, mais il est trop long pour une pièce démontable
hollow-deeper-than-high = il est plus profond que haut, et le sable s'y casserait
hollow-runs-through = il traverse
hollow-no-single-move = aucun mouvement droit ne le libère
hollow-closed = il ne s'ouvre d'aucun côté
hollow-clear-when-turned = démoulé ainsi, rien ne retient
