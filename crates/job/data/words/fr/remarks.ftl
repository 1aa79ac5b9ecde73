# French, from memory: not yet read by a native founder.

# Trade words: châssis, dessus and dessous, plan de joint, descente de coulée, canal, attaque,
# masselotte, retassure, retrait, dépouille, noyau, portée de noyau, boîte à noyau. Numbers keep the
# decimal point and units their signs.

# What the founder is told beside the figures, and what to do about it.
#
# The id of a remark is its code, which stands in plan.json; after a hyphen it says which of several
# wordings of the code it is. Each has an .advice that can be followed in a shop.

## The mesh

open_boundary = { $edges } arête(s) ouverte(s), { $loops } ouverture(s) : la peau a des trous
    .advice = fermer la peau à cet endroit dans le logiciel de dessin et exporter un solide
missing_face = des faces de la peau manquaient ({ $area }) et ont été fermées à plat ; le volume va de { $least } à { $most } selon le couvercle
    .advice = vérifier que la pièce est pleine à cet endroit ; une pièce creuse dessinée sans épaisseur est prise pour pleine : lui donner une paroi
winding = facettes tournées à l'inverse de leurs voisines le long de { $edges } arête(s)
    .advice = exporter de nouveau la pièce comme un seul solide
inverted = { $shells } peau(x) retournée(s), le dedans dehors
    .advice = exporter de nouveau la pièce comme un seul solide
non_manifold = { $edges } arête(s) où se touchent plus de deux facettes
    .advice = unir ou séparer les corps qui se touchent sur cette arête
self_intersection = { $facets } facette(s) en traversent d'autres ; { $miscounted } du métal compté deux fois ou à l'envers
    .advice = unir les corps dans le logiciel de dessin, puis exporter de nouveau
duplicate_facets = { $facets } facette(s) en double
    .advice = exporter de nouveau la pièce
degenerate_facets = { $facets } facette(s) sans surface
    .advice = exporter de nouveau la pièce
multi_body = { $count } corps séparés
    .advice = chacun est coulé comme il est posé ; un corps par fichier si ce sont des pièces différentes
multi_body-within = { $count } corps séparés, dont { $within } dans le métal d'un autre
    .advice = unir les corps, ou exporter celui qu'il faut
enclosed_void = { $count } vide(s) enfermé(s) dans le métal, { $volume } en tout
    .advice = aucun noyau n'y tiendrait ni n'en sortirait : ouvrir le vide vers l'extérieur, ou le remplir
no_volume = pas de volume à couler
    .advice = donner une paroi à la pièce et l'exporter comme un solide
unit_suspect = le fichier dit { $unit } : le plus grand côté ferait { $size }
    .advice = comparer cette taille avec le dessin avant de rien faire
unit_suspect-none = le fichier ne donne pas d'unité et son plus grand côté est de { $size }
    .advice = choisir (part.unit dans le fichier, ou --unit) : { $offers } ; une main fait environ 190 mm, un crayon 175 mm
    .sheet = choisir son unité : { $offers } ; une main fait environ 190 mm, un crayon 175 mm
unit_judged = le fichier ne donne pas d'unité ; pris pour des millimètres : { $mm } ({ $inches })
    .advice = si c'est faux, dire l'unité : part.unit dans le fichier, ou --unit
    .sheet = si c'est faux, en mettre une autre sous « { key-unit } »
mended = réparé : { $done }
    .advice = le fichier lui-même reste comme il était

## The part

solids_apart = les solides font { $bodies } corps séparés
    .advice = ceux qui vont ensemble doivent se toucher : faire entrer l'un d'un millimètre dans l'autre
solid_adds_nothing = le solide { $number } est tout entier dans ce qui le précède
    .advice = vérifier sa place et ses cotes ; il n'ajoute pas de métal
solid_takes_nothing = le solide { $number } enlève là où il n'y a rien
    .advice = vérifier sa place ; il n'agit que sur les solides écrits avant lui
volume_guessed = sans pesée, le métal est deviné : { $low } à { $high }
    .advice = peser le modèle, de préférence dans l'eau, et écrire [part.displaced] ; d'ici là fondre pour le haut de la fourchette
    .sheet = peser le modèle dans l'air et dans l'eau et écrire les deux dans le fichier de la pièce, job.toml, sous [part.displaced] ; la feuille suit dès qu'il est enregistré ; d'ici là fondre pour le haut de la fourchette
volume_by_weight = par le seul poids, le métal peut être faux de { $off }
    .advice = une pesée dans l'eau ramènerait cela à quelque 2 % : écrire [part.displaced]
    .sheet = une pesée aussi dans l'eau ramènerait cela à quelque 2 % : écrire les deux poids dans le fichier de la pièce, job.toml, sous [part.displaced] ; la feuille suit dès qu'il est enregistré
sizes_only = parois, ombre et modules reposent sur cinq cotes, non sur une forme
    .advice = leurs fourchettes sont larges : se tenir du côté sûr, et écrire mould.joint
    .sheet = leurs fourchettes sont larges : se tenir du côté sûr, et remplir « { key-joint } »
sizes_only-joint = parois, ombre et modules reposent sur cinq cotes, non sur une forme ; le plan de joint est pris à mi-hauteur
    .advice = leurs fourchettes sont larges : se tenir du côté sûr, et écrire mould.joint
    .sheet = leurs fourchettes sont larges : se tenir du côté sûr, et remplir « { key-joint } »
prove_it-pressure = la pièce tient une pression : aucun chiffre ici ne dit qu'elle est sûre
    .advice = { proved-by-test }
prove_it-lifting = la pièce lève ou porte des personnes : aucun chiffre ici ne dit qu'elle est sûre
    .advice = { proved-by-test }
prove_it-brake = la pièce fait partie d'un frein : aucun chiffre ici ne dit qu'elle est sûre
    .advice = { proved-by-test }
prove_it-food = la pièce touche des aliments : aucun chiffre ici ne dit qu'elle est sûre
    .advice = { proved-by-test }
prove_it-load = la pièce porte une charge : aucun chiffre ici ne dit qu'elle est sûre
    .advice = { proved-by-test }

## The pattern

enclosed_void-plan = { $count } vide(s) fermé(s) dans la pièce : impossible à mouler
    .advice = aucun noyau n'y entre ni n'en sort : les ouvrir vers l'extérieur ou les remplir
thin_wall = parois d'environ { $wall } ; ce métal demande d'ordinaire { $least } en sable
    .advice = épaissir la paroi, attaquer tout près, ou couler au plus chaud
walls_unmeasured = parois trop minces pour les cellules employées, sur { $share } de la surface
    .advice = les mesurer à la main ; elles ne comptent pas dans les sections
contraction_disputed = { $sources } sources donnent un retrait de { $low } à { $high }
    .advice = mesurer la prochaine pièce et écrire metal.contraction dans job.toml
    .sheet = mesurer la prochaine pièce et remplir « { key-contraction } »
worn_original = moulé tel quel, un original de { $longest } donne { $low } à { $high } : il s'est déjà retiré une fois
    .advice = recharger ses faces du retrait, de l'usure et de l'usinage avant de mouler ; une vieille peinture peut contenir du plomb : ne pas poncer à sec
machined_faces = pour autant que ce plan le sache, la surépaisseur d'usinage n'est pas dans le maillage
    .advice = l'ajouter à chaque face usinée, plus à celles sous le dessus ; mieux, tourner vers le bas la face la plus importante
rapping_not_counted = à { $longest } l'ébranlage ne compense pas le retrait
    .advice = agrandir le modèle de tout le retrait ; au-delà d'environ 75 mm l'ébranlage compte trop peu
no_draft = { $share } de la peau est verticale, la pièce posée à plat : aucune dépouille pour la démouler
    .advice = donner à ces parois la dépouille que demande le plan ; là où elles serrent le sable, il en faut le plus
print_lines = un modèle imprimé en couches de { $layer } retient le sable dans ses stries
    .advice = le boucher, le poncer dans le sens du démoulage et le cirer avant de serrer le sable
cannot_draw = { $what } : tel quel, cela ne sort pas du sable
    .advice = décaler le plan de joint jusque-là, en faire une pièce battue ou un noyau, ou coucher le modèle sur une fausse partie
not_looked_at = dépouille, contre-dépouilles, plan de joint et portées ne sont pas examinés ici
    .advice = essayer le modèle dans du sable sec avant de serrer

## Flask, sand and weights

flask_none = { $why }
    .advice = le plan continue avec un châssis de cette taille, à faire
flask_tight = { $why }
    .advice = serrer avec soin aux endroits étroits, ou prendre un plus grand châssis
no_head = la coulée est à { $pour } au-dessus du joint et la pièce à { $top } : elle ne peut pas se remplir
    .advice = rehausser le bassin, prendre un dessus plus haut, ou mettre plus de la pièce dans le dessous
sand_short = le moule demande { $wanted } de sable, le tas en a { $there }
    .advice = en préparer plus, ou garnir derrière le sable de contact avec du vieux sable sec
heap_unknown = le tas n'est pas dans shop.toml : le sable ne lui est pas comparé
    .advice = le peser une fois au seau et écrire [heap]
    .sheet = le peser une fois au seau et remplir « { key-heap-mass } » sur la fiche du sable
too_wet = le tas est à { $moisture } de la masse humide ; au-dessus de { $limit } un moule part en vapeur
    .advice = le sécher et repeser une poignée avant de serrer
moisture_unknown = l'humidité du tas n'est pas connue
    .advice = peser une poignée humide puis sèche ; du sable trempé sous le métal vous le renvoie au visage
flask_heavy = une moitié du châssis pèse { $load } ; trois personnes peuvent lever ensemble { $three }
    .advice = prendre un palan, serrer là où l'on coule, ou prendre un châssis plus petit
weights_needed = le métal soulève le dessus : { $lay } posés dessus ne sont pas facultatifs
    .advice = les poser, ou brider avec la même force, avant la première goutte
mould_stands = le moule attend { $stands } avant la coulée ; un tel sable se garde environ { $keeps }
    .advice = le fermer et le couvrir ; avant la coulée, tâter la peau : ni goutte, ni miettes, ni poussière
mould_stands-long = le moule attend { $stands } avant la coulée ; un tel sable se garde environ { $keeps }
    .advice = le couvrir ; avant la coulée, tâter la peau : si elle s'effrite, humecter, laisser reposer et raffermir ; si elle goutte ou semble mouillée, sécher ou refaire le moule
irons_short = il faut { $wanted } sur le dessus ; vos poids en font { $there }
    .advice = brider dessus et dessous avec la même force, ou emprunter des poids

## Feeding and filling

feeder_none-thin = pas de masselotte : chaque section est assez mince pour être nourrie par son attaque
    .advice = si un bossage se creuse quand même, mettre une masselotte dessus la prochaine fois
feeder_none-iron = pas de masselotte : une fonte de ce carbone gonfle dans un moule montré ferme par : { $shown }
    .advice = ne vaut que si chaque moule est aussi ferme ; un moyeu lourd peut se creuser : masselotte ou refroidisseur
feeder_iron = une masselotte est prévue : aucun essai ne montre le moule ferme, ou le carbone est inconnu
    .advice = écrire mould.firm et metal.carbon_equivalent dès qu'ils sont connus
    .sheet = dès qu'ils sont connus, écrire dans le fichier de la pièce, job.toml, ce qui a montré le moule ferme (firm, sous [mould]) et carbon_equivalent (sous [metal])
feeder_impossible = le retrait dépasse ce qu'une masselotte simple de n'importe quelle taille peut donner
    .advice = manchon isolant, plusieurs masselottes, ou refroidisseurs ; demander à un fondeur d'expérience
feeder_high = la masselotte a { $height } de haut et le dessus { $cope }
    .advice = poser une bague de sable sur le dessus, ou prendre un dessus plus haut
hot_spot-meet = cela se fige en dernier là où { $one } rejoint { $other }
    .advice = c'est là que va la masselotte ou le refroidisseur, même si autre chose paraît plus épais
hot_spot-in = cela se fige en dernier dans { $one }
    .advice = c'est là que va la masselotte ou le refroidisseur, même si autre chose paraît plus épais
more_heavy_sections = { $count } section(s) de plus presque aussi massive(s) que celle qui est nourrie ; voici la suivante
    .advice = chacune se fige à part : masselotte ou refroidisseur, ou les relier par une paroi plus forte
fills_too_late = la paroi la plus mince, environ { $wall }, se fige en { $freezes } : aucune descente usuelle ne la remplit
    .advice = s'attendre à une malvenue : l'épaissir, attaquer droit dedans, ou la laisser à l'usinage
fill_must_hurry = la paroi la plus mince se fige avant le temps de remplissage usuel
    .advice = la section d'étranglement est prise pour le temps court : couler sans pause, au plus chaud
gate_too_fast-widen = l'attaque la plus rapide va à { $speed } ; au-dessus de { $limit } le front se brise, replie sa peau et arrache le sable
    .advice = tailler les attaques à { $area } en tout, larges et plates, et attaquer par le bas
gate_too_fast-slow = l'attaque la plus rapide va à { $speed } ; au-dessus de { $limit } le front se brise, replie sa peau et arrache le sable
    .advice = abaisser la coulée ou ralentir le métal par un canal plus large ou un filtre ; les attaques seules n'y suffisent pas
gates_uneven = avec des attaques d'une seule taille, la dernière pièce est pleine { $lag } après la première
    .advice = tailler les attaques à { $cut } en s'éloignant de la descente, ou réduire le canal par paliers

## Cores

core_seat_unknown = on ne sait pas comment tient le noyau « { $core } » ; toute sa poussée est comptée
    .advice = écrire sits = hung, bridged, standing ou chaplets ; tirer les gaz par sa portée
core_pins = le noyau « { $core } » n'a pas de portée et { $pins } pointes : il peut tourner dessus
    .advice = trois pointes au moins, pas toutes dans un plan, et une sortie de gaz à l'air libre
core_loose = le noyau « { $core } » est debout sur sa portée et flotte de { $lift } dès que le métal passe dessous
    .advice = le pointer ou le caler par-dessus ; tirer les gaz par la portée, hors du métal
core_oversize = l'épais se fige bien après le mince ; un noyau « { $core } » plus gros enlève du métal là où il traverse l'épais
    .advice = faire le trou noyauté plus grand si le dessin le permet, d'autant que la pièce se retire de { $low } à { $high }
core_print = la portée du noyau « { $core } » presse de { $pressure } un sable qui en supporte { $strength }
    .advice = agrandir la portée jusqu'à ce que le sable soit deux fois plus fort, ou y serrer davantage

## The metal

crucible_none = aucun de vos creusets ne tient { $charge } à remplissage de travail
    .advice = un moule se coule d'une traite : couler moins de pièces, ou emprunter un creuset
crucible_unknown = pas de creuset dans shop.toml : la charge n'est comparée à aucun
    .advice = écrire [[crucible]] avec sa marque ou son volume à ras bord
    .sheet = écrire sa marque ou son volume à ras bord dans le fichier de l'atelier, shop.toml, sous [[crucible]] ; la feuille suit dès qu'il est enregistré
loss_unknown = pas de chiffre pour la perte au feu de ce métal dans ce genre de four ; du meilleur au pire des autres fours est pris
    .advice = peser une fois ce qui entre et ce qui sort, et écrire melt.loss
    .sheet = peser une fois ce qui entre et ce qui sort, et remplir « { key-loss } »
lead_food = ce métal contient du plomb, ou peut-être : rien qui touche des aliments n'en est coulé
    .advice = seulement du lingot propre de composition connue ; trier la ferraille réduit le risque sans le supprimer ; demander aux autorités sanitaires
zinc_back = le zinc part en fumée et se rajoute en dernier : il peut s'enflammer
    .advice = chaud, sec, enfoncé à la pince, au plus bas feu qui coule ; dehors, dos au vent, avec un masque à fumées
pour_hot = la fonte se coule chaude dans une paroi de { $wall } : { $low } à { $high } ; plus froide, elle ne remplit pas et vient blanche
    .advice = au bec, dans les minutes qui suivent l'inoculant ; les livres disent 1350 à 1450 °C pour les parois minces, une fonderie coule tout entre 1320 et 1440 °C
no_probe = pas de sonde : la chaleur se lit sur une carte de couleurs et de peau, et au temps que met une cuillerée à se figer
    .advice = oddside reckon spoon lit les deux ; régler la cuillère une fois à côté d'une sonde prêtée ; dans le doute, couler d'abord un barreau d'essai
scrap_was = { $was } : { $mind }
    .advice = avant de rien mettre au creuset ; ce qui ne se nettoie pas reste dehors
wanted_equivalent = une paroi de { $wall } demande un carbone équivalent de { $low } à { $high }, pour se laisser limer
    .advice = donner le mélange de ferrailles en fourchette ; plaques de poêle et radiateurs sont riches en phosphore
degas = le dégazage prend { $low } à { $high } de pastilles à 730 à 760 °C, si toutefois on le fait
    .advice = dehors et dos au vent, plongées sèches et chaudes, puis 2 à 3 min de repos ; deux godets disent si cela a servi

# These four say the same as the table of fume and poison, crates/metal/data/fumes.toml.
zinc_fume = le zinc bout en fumée blanche et donne la fièvre des fondeurs
    .advice = dehors ou sous une hotte, dos au vent, avec un masque à fumées ; ne pas surchauffer
lead = contient du plomb : fumées, poussières et crasses empoisonnent
    .advice = masque, ni manger ni fumer à côté, se laver avant de rentrer ; jamais pour des aliments
magnesium_scrap = le magnésium ressemble à l'aluminium ; il brûle, et l'eau l'attise
    .advice = essayer chaque morceau de ferraille ; garder du sable sec ou un extincteur de classe D à portée de main
unknown_scrap = une ferraille de composition inconnue peut contenir du plomb, du cadmium ou de la peinture
    .advice = ne prendre que ce qui a déjà été coulé et dont on connaît l'origine ; jamais pour des aliments

takes_up_gas = prend de l'hydrogène s'il est tenu longtemps, chaud ou à l'humidité : piqûres
    .advice = fondre vite, tout sécher, couler dès que c'est prêt
oxide_folds = une peau tenace se replie dans le métal partout où le jet se brise
    .advice = bassin toujours plein, remplir par le bas, pas d'éclaboussures
spoiled_by_lead = des traces de plomb, d'étain ou de cadmium font pourrir ces pièces au fil des ans
    .advice = lingot connu seulement, creuset et outils à part
spoiled_by_aluminium = un peu d'aluminium ou de silicium venu d'une autre ferraille le gâte
    .advice = garder ses retours et ses outils à part
spoiled_by_brass_returns = des retours au plomb le font criquer
    .advice = pas de retours de laiton ni de bronze au plomb dans cette charge
chills_white = les sections minces peuvent venir blanches et dures
    .advice = couler d'abord un coin de trempe ; inoculer et couler dans les minutes qui suivent
tears_hot = se déchire dans le moule là où il est retenu
    .advice = arrondir les angles, serrer les noyaux mollement, ouvrir assez tôt
fine_sponge = fine porosité dans les sections massives, quelle que soit la masselotte
    .advice = mettre en bas les faces à usiner, et les refroidir

## The charge

charge_galvanised = { $heap } : revêtu de zinc : fumée blanche à la fusion, et fièvre ensuite
    .advice = le laisser de côté ; s'il doit entrer, dehors, dos au vent, avec un masque à fumées
charge_leaded = { $heap } : contient du plomb : fumées, poussières et crasses empoisonnent
    .advice = masque, ni manger ni fumer à côté, se laver avant de rentrer ; jamais pour des aliments
charge_painted = { $heap } : peinture et revêtements brûlent en fumée toxique ; les vieilles peintures contiennent du plomb
    .advice = décaper d'abord, pas au feu ; dehors, dos au vent, avec un masque à fumées
charge_oily = { $heap } : l'huile s'enflamme, fume et gaze le bain
    .advice = laver et sécher ; ne jamais jeter de métal huileux dans un bain
charge_plated = { $heap } : le placage peut être du chrome, du nickel ou du cadmium : fumée toxique
    .advice = le laisser de côté à moins de savoir quel placage c'est
charge_damp = { $heap } : des morceaux humides ou creux font sauter le bain hors du creuset
    .advice = ouvrir chaque creux, sécher à chaud, et ne charger que dans un creuset froid
charge_unstated = { $heap } : rien n'est dit de : { $elements } ; compté comme absent
    .advice = écrire une fourchette, comme « below 0.15 % » : la chance compte ce qui est écrit
charge_no_price = pas de prix pour { $heaps } : compté comme gratuit
    .advice = écrire ce qu'on en tirerait ou ce que coûte le pareil, sinon il entre le premier
charge_scale = arrondi à la balance, ceci sort de la cible : { $elements }
    .advice = peser sur une balance plus fine (scale_step), ou faire une plus grande charge
charge_unsure = les tas ne sont pas assez bien connus pour cette cible
    .advice = les trier, faire analyser un morceau de chacun, ou prendre plus du métal le plus pur
charge_try = une charge est une somme sur des estimations tant que le bain n'est pas essayé
    .advice = couler un coin ou un barreau d'essai et regarder la cassure avant de couler le moule
charge_not_made = pas de charge de vos tas : { $why }
    .advice = ajouter ce qui est nommé, ou élargir les limites sous [charge]
    .sheet = ajouter ce qui est nommé aux tas du fichier de l'atelier, shop.toml, ou élargir les limites dans le fichier de la pièce, job.toml, sous [charge]

## Opening

hot_mould = ouvert avant { $open } il peut être liquide ou rouge à l'intérieur
    .advice = compter depuis la fin de la coulée ; pince, gants, bottes ; jamais d'eau dessus
hot_mould-oil = ouvert avant { $open } il peut être liquide ou rouge à l'intérieur, et l'huile du sable chaud s'enflamme
    .advice = compter depuis la fin de la coulée ; pince, gants, bottes ; jamais d'eau dessus
open_late = épais et mince se tiennent : ce qui refroidit d'abord tire, et fissure ou se fissure
    .advice = laisser { $open } dans le sable ; cintrer les bras droits entre épais et mince, en nombre impair et fins ; rien de cela ne suffit seul
never_cold = tant de métal dans si peu de sable n'est pas froid en quinze jours
    .advice = prendre un plus grand châssis, ou faire ouvrir par un fondeur d'expérience
solved_longer = d'après la chaleur dans le moule, les pièces mettent { $solved } à se solidifier, et non { $pencil } comme d'après la loi des modules
    .advice = comptez le plus long : ne touchez pas au moule avant
solved_sooner = d'après la chaleur dans le moule, les pièces sont solides après { $solved }, et non { $pencil } comme d'après la loi des modules
    .advice = la loi ne compte que la section la plus massive ; le plan reste prudent
solved_open = d'après la chaleur dans le moule, les pièces sont assez froides après { $solved }, et non { $plan } comme le dit le plan
    .advice = ouvrez au plus tard des deux
solved_cut_off = endroits des pièces coupés de toute masselotte pendant qu'ils se solidifient : { $count } ; il y manque { $lacks } de métal
    .advice = voyez où avec oddside freeze : nourrissez, refroidissez ou épaississez l'accès
    .sheet = voyez où par la coupe de la solidification plus bas : nourrissez, refroidissez ou épaississez l'accès
solved_stale = ce qui est gardé d'une solidification appartient à un autre plan ou maillage et n'est pas utilisé
    .advice = relancez oddside freeze avec --force
    .sheet = suivez la solidification une fois de plus, plus bas
