# What is typed in a job's file, as the sheet calls it.

key-name = nom de la pièce
key-date = jour de la coulée
key-alloy = alliage
key-count = pièces par moule
key-serves = à quoi elle sert
key-form = forme de la charge
key-loss = perte à la fusion
key-pig = gardé pour la lingotière
key-flask = châssis
key-unit = unité du maillage
key-up = quel côté est en haut
key-from = ce que représente le maillage
key-contraction = votre propre retrait
key-machined = des faces sont usinées
key-rapped = le modèle est bien ébranlé
key-printed = imprimé par couches de
key-joint = hauteur du joint
key-sprue = place de la descente
key-gates = places des attaques
key-feeders = places des masselottes
key-pour-height = hauteur du joint au godet

## The words that may be chosen

said-ornament = à regarder
said-machine = dans une machine
said-food = pour manger ou boire
said-pressure = tient une pression
said-lifting = lève, ou porte une personne
said-brake = freine
said-ingot = lingot, retours propres
said-heavy = pièces cassées
said-thin = tôle, peinte ou grasse
said-swarf = tournures, limaille
said-cans = canettes
said-part = la pièce telle qu'on la veut
said-worn-original = un original usé

## The shop

key-units = unités qui viennent d'abord
key-words = langue, et mots britanniques ou américains
key-furnace = sorte de four
key-heap-mass = sable dans le tas
key-heap-bond = ce qui le lie
key-heap-moisture = son humidité
said-metric = kg et mm
said-inch = lb et pouces
said-uk = anglais, mots britanniques
said-us = anglais, mots américains
said-fr = français
said-es = espagnol
said-bentonite = bentonite
said-natural = sa propre argile
said-oil = huile
said-fuel-crucible = creuset au gaz, au fioul ou au charbon de bois
said-electric-crucible = creuset électrique
said-induction = induction
said-cupola = cubilot
