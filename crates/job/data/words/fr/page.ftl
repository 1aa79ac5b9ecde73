# La page du navigateur.

## A blank sheet, and the jobs of the folder

page-start = Une fiche vierge
page-part = pièce
page-choose-mesh = choisir un maillage de la pièce
page-drop-mesh = ou en déposer un n'importe où sur cette fiche : STL, OBJ, PLY ou 3MF
page-name-of-job = nom de la pièce
page-in-metal = à couler en
page-make = Commencer la fiche
page-all-jobs = Toutes les pièces
page-no-jobs = Il n'y a encore rien dans ce dossier.
page-unreadable = son fichier est illisible
page-loading = Un instant : le calcul est en cours.

## A mesh without a unit

page-unsettled = Il faut d'abord régler le maillage
page-unit-of-mesh = Quelle est la taille de la pièce ?
page-unit-unknown = Le maillage ne dit pas ce que sont ses nombres. Voici la pièce dans chaque unité, à l'échelle : choisissez celle qui est vraie.
page-beside-hand = à côté d'une main
page-beside-pencil = à côté d'un crayon

## The strip and the head

page-what-to-do = Que faire de cette fiche
page-undo = Annuler
page-redo = Refaire
page-on-paper = sur le papier
page-print = Imprimer
page-is-changed = modifié
page-working = Un instant : la fiche est recalculée.
page-server-gone = Oddside ne répond pas. Ce que vous avez tapé est gardé ici et sera envoyé dès qu'il répondra ; relancez-le s'il a été arrêté.
page-stops = STOP : ne pas couler cette pièce en l'état
page-red-lines = Lignes rouges : chacune doit être vraie avant de fondre
page-remarks = Remarques

## What is typed

page-typed-for = Ce qui est tapé
page-change = modifier
page-taken-as = compté comme
page-blank = laissé en blanc
page-unset = laissé au programme
page-empty-leaves = Laissé vide, c'est au programme de choisir.
page-like = S'écrit comme
page-keep = Garder
page-give-up = Renoncer
page-yes = oui
page-no = non
page-another-change = Ceci a été modifié entre-temps, dans une autre fenêtre ou dans le fichier lui-même. Lequel des deux doit rester ?
page-theirs = en place maintenant
page-mine = tapé ici
page-keep-theirs = Laisser ce qui est en place
page-use-mine = Mettre le mien à sa place

## Why

page-why = pourquoi
page-because = Ce qui le fixe
page-formula = Formule
page-with-numbers = Avec les nombres
page-given = Ce qui y est entré
page-range = Où elle vaut
page-narrow = Ce qui resserrerait le chiffre
page-mind = À surveiller
page-sources = Sources
page-close = Fermer

## The drawing

page-the-mould = Le moule
page-flat = Plan et coupe
page-no-solid-view = Ce navigateur ne dessine pas de solides ; le dessin à plat dit la même chose.
page-stale = Le programme a été renouvelé depuis l'ouverture de cette page : rechargez-la.
page-point-at = Montrez un élément pour lire son nom.
page-turning = Les flèches tournent le moule, + et - approchent et éloignent, Origine (Home) le remet comme il était ; les boutons font de même.
page-cut = ouvrir en coupe
page-cut-along = coupe en long
page-cut-across = coupe en travers
page-apart = démonter
page-turn-left = Tourner à gauche
page-turn-right = Tourner à droite
page-tip-up = Vu de dessus
page-tip-down = Vu de dessous
page-nearer = Plus près
page-farther = Plus loin
page-put-back = Remettre
page-save-picture = Garder l'image
