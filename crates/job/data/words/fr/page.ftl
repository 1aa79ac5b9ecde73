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

## Maps on the drawing

page-map-of = Montrer
page-map-mould = le moule
page-map-darker = Plus c'est foncé, plus il y en a.
page-map-nothing = pas de valeur ici
page-map-cross = Pointez un endroit pour y lire sa valeur, ou menez-y la croix : Maj et les flèches, le curseur étant sur l'image.
page-map-legend = Ce que disent les teintes
map-wall = épaisseur
map-draught = dépouille
map-undercut = contre-dépouille
map-modulus = module
map-freezing = solidification
map-wall-tells = L'épaisseur de métal derrière chaque endroit de la peau : la plus grande boule qui y tient. La plus forte est de { $most } et se solidifie en dernier.
map-draught-tells = La dépouille qui manque aux parois pour leur profondeur : il en manque à { $area }, jusqu'à { $most }. Le modèle la reçoit sauf avis contraire.
map-draught-none = La dépouille qui manque aux parois pour leur profondeur : il n'en manque nulle part.
map-undercut-tells = Ce qui de la peau ne se démoule dans aucun sens : { $area }, avec { $held } de sable retenu derrière.
map-undercut-none = Ce qui de la peau ne se démoule dans aucun sens : rien, tout quitte le sable.
map-modulus-tells = Le module de chaque endroit, le métal sur la surface qui le refroidit. Le plus lourd a { $most } ; les temps de solidification vont comme son carré.
map-freezing-tells = Quand chaque endroit est solide, suivi sur le moule. Le dernier métal est solide après { $last }.
page-map-beyond = et plus

## Gates and feeders moved on the plan

page-handles = Attaques et masselottes sur le joint : tirez-en une, ou choisissez-la et menez-la avec les flèches, 1 mm à la fois.

## The pattern leaving the sand

page-draw-out = modèle démoulé
page-draw-play = Montrer le mouvement
page-draw-halt = Le retenir
page-draw-tells = Le dessus est levé, puis le modèle est démoulé vers le haut, hors du dessous.

## Longer work

page-freezing = Suivre la solidification
page-follow = Suivre la solidification
page-follow-tells = La chaleur du moule coulé est suivie jusqu'à ce que tout soit solide : quand chaque endroit se solidifie, ce qui est coupé, quand ouvrir. Cela prend des minutes, continue quand cette page est fermée, et est gardé dans le dossier de la pièce.
page-run-under-way = en cours
page-run-waits = attend la fin du précédent
page-run-left = reste environ
page-run-stop = L'arrêter
page-run-stopped = arrêté ; suivie de nouveau, elle reprend de là
page-run-done = fini ; c'est gardé dans le dossier de la pièce
page-run-given-up = arrêté
page-runs = En cours
page-feeder = La plus petite masselotte qui alimente
page-feeder-tells = Le moule est construit avec des masselottes de plusieurs tailles, et chacune est suivie jusqu'à ce que tout soit solide. Cela prend des minutes et continue quand cette page est fermée.
page-feeder-search = La chercher
page-run-failed = cela n'a rien donné :
page-run-fresh = La solidification de ce moule même a été suivie. La coupe passe par l'endroit qui est solide en dernier ; ses lignes portent des minutes.
page-run-stale = Une solidification a été suivie, mais d'un autre plan : suivez-la de nouveau.

## Sand and shop

page-sand = Sable
page-shop = Atelier
page-heap = Le tas
page-ask-water = Combien il est humide, et ce qui lui manque
page-ask-dry = Le poids jusqu'auquel sécher
page-ask-stand = Combien de temps un moule peut attendre
page-ask-recipe = Un mélange, pesé
page-ask-fill = Écrivez ce que vous savez ; ce qui reste vide est pris comme dans les livres.
page-ask-go = Calculer
page-settings = Unités et mots
page-furnace = Le four

## Experiments

page-trials = Essais
page-trial-none = Il n'y a encore aucun essai dans ce dossier. Pour en commencer un :
page-trial-plan = Garder ce plan
page-trial-more = Ajouter un mélange que les résultats suggèrent
page-trial-cards = Cartes des mélanges
page-trial-open = pas encore mesuré
page-trial-differs = { $name } du mélange { $batch } vaut déjà { $before }, et { $now } est tapé maintenant. Qu'est-ce que cela veut dire ?
page-trial-far = { $name } du mélange { $batch } : { $now } est loin de tous les autres ({ $low } à { $high }). Est-ce juste ?
page-trial-off-plan = { $name } du mélange { $batch } : { $now } pesé, { $planned } prévu. Est-ce juste ?
page-trial-replace = La première valeur était fausse ; elle reste dans le fichier
page-trial-again = Le mélange a été mesuré une deuxième fois
page-trial-sure = C'est juste
page-pictures = Graphiques

## The log

page-log = Journal
page-log-new = Noter une coulée
page-log-of-job = ce qui a été coulé
page-log-planned = prévu :
page-log-good = bonnes, sur
page-log-write = Noter
page-log-written = C'est dans le journal.
page-log-empty = Il n'y a encore aucune coulée dans le journal.
page-log-pour = Coulée { $number } · { $job } · { $metal }
page-log-mould = Moule { $number } et son sable
page-log-heat = Fusion { $number }
page-log-casting = Pièce { $number }
page-log-look = Qu'est-ce qui ne va pas ?
page-log-record = Ce qui a été noté ce jour-là
page-log-causes = D'où cela peut-il venir ?
page-log-wrong = Quelque chose a mal tourné
page-log-asked = Ce qui se contredit
page-log-accept = Reprendre dans le fichier de l'atelier :

## The sand on the page

page-sand-tests = Le sable tel qu'il a été essayé
page-sand-book = Le livre du tas
page-sand-nothing = Rien n'en découle encore : remplissez ce que vous avez essayé.

## A part that is described

page-described = comment elle est donnée
page-as-mesh = un maillage
page-like-what = à quoi elle ressemble

## A class, and the words of the trade

page-lesson = Leçon
page-lesson-class = La classe
page-lesson-pupils = élèves, une pièce chacun
page-lesson-sessions = leçons où ils viennent
page-lesson-minutes = minutes d'une leçon
page-lesson-adults = adultes au feu
page-lesson-flasks = châssis de la taille du plan
page-lesson-flasks-left = ceux du fichier de l'atelier
page-lesson-lay = Répartir en leçons
page-lesson-plan = Plan pour la classe
page-lesson-tasks = Ce que l'élève calcule
page-lesson-answers-apart = Le corrigé s'imprime sur une feuille à part. Il n'est pas sur cette page, qu'une classe regarde peut-être.
page-glossary = Glossaire
page-glossary-seek = un mot ou une partie, en toute langue
page-glossary-count = mots trouvés :
page-glossary-none = Aucune entrée n'a ce mot.
page-glossary-words = Mots du métier
page-glossary-sheet = Mots du métier sur cette feuille

## The bench card of a job

page-bench-card = Carte d'atelier
page-bench-phone = Sur un téléphone appairé : pointer l'appareil photo vers les carrés, ou ouvrir
page-bench-no-phone = Pour un téléphone, gants aux mains : lancer le programme par oddside serve DIR --lan, et les carrés pour l'appareil photo se trouvent ici.
page-lead = Remplir :
