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
