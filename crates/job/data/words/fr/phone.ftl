### La carte d'atelier sur le téléphone.

## The page on which a phone is paired

phone-welcome = Associer ce téléphone
phone-welcome-first = 1. Le certificat de l'atelier
phone-welcome-certificate = Votre téléphone ne connaît pas encore l'ordinateur de votre atelier. Installez une fois le certificat de l'atelier : il ne se porte garant que d'adresses de réseaux locaux.
phone-welcome-install = Télécharger le certificat
phone-welcome-compare = Avant de lui faire confiance, comparez son empreinte (SHA-256), telle que le téléphone la montre, à celle du terminal. Cette page peut être trompée, le terminal non :
phone-welcome-how = Ouvrez le fichier téléchargé, installez-le comme certificat d'une autorité dans les réglages du téléphone et, là où les réglages le demandent, activez la confiance totale. Rouvrez ensuite cette adresse : il n'y a plus d'avertissement.
phone-welcome-then = 2. Le code du terminal
phone-welcome-code = Huit chiffres, tels qu'ils figurent dans le terminal
phone-welcome-name = Comment vous appelez ce téléphone (peut rester vide)
phone-welcome-pair = Associer
phone-wrong-code = Ce n'est pas le code. Essais restants : { $left }.
phone-no-code = Aucun code n'est plus valable : il a servi, il a plus de dix minutes, ou il y a eu trop d'essais. Faites-en un nouveau dans le terminal : oddside phones add

## In the terminal

phone-serve-open = pour les téléphones : { $address }
phone-serve-code = code pour associer un téléphone, valable { $minutes } minutes : { $code }
phone-serve-print = empreinte du certificat de l'atelier, à comparer à ce que montre le téléphone : { $print }
phone-serve-who = Tout le monde sur ce réseau peut essayer d'entrer ; seuls les téléphones associés reçoivent une réponse (oddside phones list). Ctrl-C ferme tout.
phone-none-paired = aucun téléphone n'est associé
phone-removed = { $name } n'a plus accès
phone-head-name = téléphone
phone-head-paired = associé

## Whoever is not paired

phone-not-paired = Ce téléphone n'est pas associé, ou ne l'est plus.
phone-not-paired-hint = Ce qui a été noté y est gardé ; associez-le de nouveau pour l'envoyer.
phone-pair = Associer ce téléphone

## The bench card

phone-heap = Au tas
phone-weigh = Peser
phone-test = Essayer
phone-ready = Prêt ?
phone-pour-goes-on = La coulée continue
phone-which-job = Quelle pièce ?
phone-other-job = Une autre pièce
phone-no-jobs = Il n'y a encore rien dans ce dossier.
phone-back-to-heap = Retour au tas
phone-back = Retour
phone-next = Suivant
phone-stop = STOP
phone-server-gone = Oddside ne répond pas : la carte montre le dernier plan, ce que vous notez est gardé ici et envoyé plus tard.
phone-stale = Le programme a été renouvelé depuis que cette carte est gardée. Toutes les notes restent.
phone-renew = Prendre la nouvelle carte
phone-loading = Un instant : le plan est en cours de calcul.
phone-never-here = Le plan de cette pièce n'a jamais été sur ce téléphone : il viendra quand le serveur répondra.
phone-waits = Ce chiffre est calculé par le serveur et l'attend.

## What is kept and sent

phone-kept = Gardé :
phone-kept-sent = gardés ici : #1, envoyés : #2
phone-not-kept = Cela n'a pas pu être gardé sur le téléphone :
phone-refused = Refusés par le journal, toujours ici : #1
phone-undo = Annuler le dernier
phone-send = Envoyer

## Numbers

phone-unit = Unité
phone-delete = Effacer un chiffre
phone-right = C'est juste
phone-leave-out = Laisser de côté
phone-as-last = comme la dernière fois
phone-as-planned = comme prévu
phone-as-mixed = comme le veut le mélange

## Weighing

phone-which-mix = Quel mélange ?
phone-how-much-sand = Combien de sable sec ?
phone-part-of = #1 sur #2
phone-drying = Le poids où cesser de sécher
phone-dry-tub = Le sable maintenant, sans son bac
phone-dry-now = Son humidité maintenant
phone-dry-wanted = L'humidité voulue

## Tests

phone-which-test = Quel essai ?
phone-test-squeeze = poignée
phone-test-drop = chute
phone-test-dent = empreinte d'une bille
phone-test-bottle = bouteille
phone-test-cylinder = cylindre
phone-test-bar = barreau
phone-test-disc = disque
phone-test-compactability = serrage
phone-test-moisture = humidité

## The ten points

phone-ready-tells = Regardez chaque point et ne le cochez qu'ensuite. Tant que les dix ne sont pas cochés, il n'y a pas de coulée.
phone-ticked = #1 sur #2 cochés
phone-pour = Couler

## The pour, step by step

phone-step-of = étape #1 sur #2
phone-step-red-lines = Chacun de ces points est vrai
phone-step-aloud = Dites-le à voix haute
phone-step-aloud-who = Qui va où avec quoi, et quel mot arrête tout le monde.
phone-step-melt = Fondre
phone-step-cope = Fermer le moule et poser les poids
phone-step-cope-closed = Fermé, lesté, plus personne ne se penche dessus.
phone-step-ready = Le métal est-il assez chaud ?
phone-step-at = couler à
phone-step-not-below = pas au-dessous de
phone-step-ready-skim = Écrémez. Plus froid, il va dans la lingotière.
phone-step-fill = Couler
phone-step-takes = le moule prend
phone-step-fill-full = Sans pause, le bassin plein jusqu'à la fin.
phone-step-wait = Attendre
phone-step-wait-hot = Laissez-le reposer. Pas d'eau à proximité.
phone-step-open = Ouvrir le moule
phone-step-open-how = Pinces et gants : ce qui est noir peut encore brûler. Humectez le sable avant qu'il ne fasse de la poussière.
phone-clock-begin = Première goutte
phone-clock-full = Plein
phone-clock-opened = Ouvert
phone-clock-not-begun = commence à la première goutte
phone-clock-not-poured = la coulée n'a pas été chronométrée
phone-clock-filling = secondes
phone-clock-filling-within = secondes : comme prévu
phone-clock-filling-after = secondes : plus long que prévu
phone-clock-opening = trop tôt : jusqu'à l'ouverture sûre
phone-clock-opening-within = peut-être : jusqu'à l'ouverture sûre
phone-clock-opening-after = on peut ouvrir

## How it came out

phone-how-out = Qu'est-ce que ça a donné ?
phone-what-poured = Qu'a-t-on coulé ?
phone-castings-of = pièces coulées : #1
phone-other-count = Un autre nombre de pièces
phone-how-many-castings = Combien de pièces ?
phone-mass-poured = Métal coulé
phone-temperature = Température du métal
phone-how-went = Comment a-t-il coulé ?
phone-how-steady = régulièrement
phone-how-broken = avec une interruption
phone-how-splashed = avec des éclaboussures
phone-how-slow = lentement
phone-how-ran-short = le métal a manqué
phone-sound = Est-ce bon pour l'usage ?
phone-sound-yes = Oui
phone-sound-no = Non
phone-sound-all = Toutes
phone-sound-none = Aucune
phone-sound-some = Quelques-unes
phone-how-many-sound = Combien sont bonnes ?
phone-sound-of = bonnes : #1 sur #2
phone-looks = Que voit-on ?
phone-keep = Garder
phone-again = Reprendre au début
