# La feuille de l'élève et le corrigé : ce qui se calcule au crayon, la règle en mots, et les
# nombres qui y entrent.

pupil-title = Feuille de l'élève
answers-title = Corrigé de la feuille de l'élève
pupil-name = Nom
pupil-lead = À calculer avant la coulée. Trois chiffres suffisent ; le verso sert au calcul. Un nombre précédé d'un carré est votre propre réponse, trouvée plus haut.
answers-lead = Calculé avec les nombres imprimés sur la feuille de l'élève, pour s'accorder avec le crayon ; un petit écart vient de l'arrondi. À côté, ce que dit le plan, qui compte l'incertitude de chaque nombre.
pupil-answer = Réponse
answers-in-the-plan = le plan : { $band }
pupil-your-answer = votre réponse { $number }
pupil-then = Après la coulée
pupil-weighed = Pièce pesée, froide
pupil-filled = Secondes de remplissage, à la montre
pupil-longest = Plus long côté, mesuré
pupil-least-sure = Lequel de vos nombres était le plus loin, et comment le mesurer mieux ?
pupil-foot = Calculs au crayon d'après des tables, sans simulation. Seuls ceux qui ont une tâche se tiennent près du feu ; le maître et les règlements locaux passent avant.

pencil-pattern-length = modèle = pièce finie × (1 + retrait)
pencil-casting-mass = masse = volume × masse volumique
pencil-poured-mass = versé = pièces × (une pièce + une masselotte) + métal du système de coulée
pencil-charge = charge = versé × (1 + part pour la lingotière) ÷ (1 − perte au feu)
pencil-sand-to-fill-the-flask = sable = (intérieur du châssis − modèles) × masse volumique du sable serré
pencil-sand-to-have-ready = à préparer = sable serré × 1,15, pour ce qui tombe et ce qu'on arase
pencil-choke-area = section = versé ÷ (masse volumique × temps × débit × √(2 × pesanteur × hauteur))
pencil-cope-lift = poussée = masse volumique × (ombre × hauteur − place au-dessus du joint), dite par la masse qu'elle soulèverait
pencil-weight-on-the-cope = charge = à-coup × poussée − dessus, au demi-kilogramme supérieur ; rien si c'est négatif
pencil-freezing-time-of-the-heaviest-section = temps = constante × module × module

pencil-number-above-joint = place au-dessus du joint
pencil-number-casting = une pièce
pencil-number-castings = pièces
pencil-number-constant = constante
pencil-number-contraction = retrait
pencil-number-cope = dessus serré
pencil-number-density = masse volumique
pencil-number-discharge = débit
pencil-number-feeder = une masselotte
pencil-number-flask = intérieur du châssis
pencil-number-head = hauteur
pencil-number-lift = poussée
pencil-number-liquid-density = masse volumique, liquide
pencil-number-loss = perte au feu
pencil-number-part = pièce finie
pencil-number-pattern = modèles
pencil-number-pig-share = part pour la lingotière
pencil-number-poured = versé
pencil-number-rammed = sable serré
pencil-number-running = système de coulée
pencil-number-section = module
pencil-number-shadow = ombre sur le joint
pencil-number-surge = à-coup
pencil-number-time = temps
pencil-fall = pesanteur
pencil-number-volume = volume

## Une classe

class-head = { $job } pour { $pupils } élèves
class-moulds = moules
class-flasks = châssis employés
class-groups = groupes à la fois
class-heats = fusions
class-metal = métal à couler en tout
class-sessions = séances qu'il faut
class-step = séance { $session }, de { $from } à { $to } min : { $what }
class-safety = tous ensemble : lunettes, chaussures et cheveux ; qui fait quoi ; personne ne souffle ni ne balaie le sable sec
class-ram = chaque groupe serre son moule, sort le modèle, ne souffle rien, ferme et marque
class-clear = ranger, couvrir les moules, se laver les mains
class-safety-fire = tous ensemble : qui se tient où, la ligne que personne ne passe, que faire si du métal se répand
class-melt-again = la fusion suivante se prépare ; les groupes résolvent la feuille d'élève et notent les premières coulées
class-pour = les adultes coulent, moule après moule ; les élèves chronomètrent et notent
class-cool = personne ne touche un moule ; résoudre la feuille d'élève pendant ce temps
class-shake-out = les groupes ouvrent leurs moules avec des gants, sur du sable sec ; les pièces restent chaudes longtemps
class-look = peser, mesurer, chercher les défauts ; l'écrire au journal
class-after = après la séance { $session }, et pas avant { $wait } min depuis la dernière coulée : les adultes ouvrent les moules avec des gants, sur du sable sec ; la classe pèse, mesure et cherche les défauts à la rencontre suivante, en { $look } min
class-heats-more = si un moule prend autant qu'il le peut, il faut { $heats } fusions, de { $minutes } min chacune en plus : pesez ce que le premier moule a pris avant de charger la fusion suivante
class-role-riddles = sable : le tamise, le pèse et l'apporte
class-role-rams = serreur : remplit et serre
class-role-joins = mouleur : poudre, évente, sort le modèle, ferme
class-role-writes = secrétaire : chronomètre, pèse et note
class-role-clears = intendant : garde le sol et les outils en ordre, avertit quand une chose gêne
class-role-turns = les rôles changent à chaque moule, ou à mi-temps ; dans un petit groupe un élève en a deux
class-role-fire = seuls les { $adults } adultes se tiennent au feu : l'un coule, l'autre garde la ligne
class-group-large = { $pupils } élèves par groupe : au-delà de { $most } certains regardent ; avoir plus de châssis, ou serrer en deux tours
class-group-small = moins de { $least } élèves par groupe : les rôles doublent et le serrage dure plus
class-too-few = il faut { $needed } séances et il y en a { $sessions } : avoir plus de châssis, un creuset plus grand, moins de pièces ou des séances plus longues
class-sand-short = { $wanted } de sable pour tous les moules et un tas de { $heap } : serrer en deux tours, ou emprunter du sable
class-melt = le four est allumé { $minutes } min avant la séance où l'on coule
class-overnight = les moules attendent la séance suivante : les couvrir d'un linge humide, et tâter chaque peau avant de fermer
class-distance = qui n'a pas de tâche se tient à 2 m du métal et de la coulée, derrière une ligne au sol
class-ingot = une lingotière sèche et chaude est prête pour le reste
class-water = ni eau, ni sable humide, ni boisson près du métal
class-feet = du cuir sur les chaussures, le pantalon long par-dessus, rien qui fonde sur la peau
class-bearing = ce qui est coulé ici ne porte, ne tient sous pression et ne freine rien
class-minutes = les minutes sont un jugement, pour des élèves qui serrent leur premier moule : chronométrer sa propre classe et les changer
