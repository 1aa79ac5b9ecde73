# French, from memory: not yet read by a native founder.

# Mixes: what each is, what to do in order, and what to mind.

mix-sugar-clay = sable lié à la mélasse et à la bentonite calcique
mix-bentonite = sable lavé lié à la bentonite sodique
mix-natural = sable naturel tel qu'il est extrait, ou sable à l'argile de terre
mix-oil-core = sable de noyau lié à l'huile de lin cuite et à la céréale
mix-silicate-core = sable de noyau lié au silicate de sodium
mix-flour-core = sable de noyau étuvé à la farine et à l'huile de lin cuite

## Steps

mix-step-strew-bentonite = humectez le sable, saupoudrez la bentonite, mélangez jusqu'à ce qu'il ne reste aucun grumeau gris
mix-step-spray-in-thirds = pulvérisez l'eau en trois fois et gardez le dernier tiers
mix-step-mull = malaxez jusqu'à ce qu'il ne reste aucune traînée et que deux essais à dix minutes se valent : oddside sand mull
mix-step-squeeze-before-the-rest = laissez reposer une heure ou une nuit ; serrez une poignée, cassez-la, serrez une éprouvette ; ne mouillez le reste qu'ensuite
mix-step-flour-oil-water = mélangez sable et farine, puis l'huile, puis l'eau jusqu'à ce qu'il tienne
mix-step-bake-till-smoking = étuvez lentement jusqu'à 250 °C, jusqu'à ce que ce soit foncé et fume à peine
mix-step-riddle-and-look-at-the-clay = tamisez pierres et racines ; regardez d'abord l'argile : bocal, puis lavage
mix-step-temper-natural = mouillez un essai à 7, 8 et 9 % d'eau et prenez la meilleure poignée : les chiffres de la bentonite ne valent pas
mix-step-cereal-oil-water = mélangez sable et céréale, puis l'huile ; l'eau seulement une fois l'huile mêlée
mix-step-bake-till-brown = étuvez une heure à chaud par 25 mm : 180 à 200 °C, jusqu'au brun noisette à cœur
mix-step-mix-and-gas = mélangez deux minutes, serrez aussitôt, gazez par coups de quelques secondes et arrêtez quand c'est ferme
mix-step-compare-by-solids = les doses de flacons différents se comparent par leur extrait sec seul : lisez soude et silice sur l'étiquette
mix-step-wash-sand = lavez le sable dans quatre ou cinq eaux, et séchez-le
mix-step-clay-then-syrup = mélangez sable et bentonite, humectés ; puis la mélasse délayée dans l'eau
mix-step-dry-back = l'eau ajoutée ne sert qu'à mélanger : ramenez le mélange à son humidité de travail, d'après votre bonne poignée
mix-step-part-without-flour = isolez avec une poudre de cuisine colorée, jamais de farine de silice ; un modèle imprimé en plastique s'en passe souvent
mix-step-skin-dry = séchez en surface ou étuvez avant de couler, et coulez tant que c'est chaud

## What to mind

mix-mind-soft-water = l'eau dure ou salée gâte la bentonite sodique : prenez de l'eau de pluie
mix-mind-flour-burns = la farine en l'air dans un malaxeur brûle : aucune flamme près
mix-mind-starch-gas = amidon et huile dégagent du gaz à la coulée : tirez de l'air au noyau, et coulez dehors
mix-mind-natural-water = les sables naturels se moulent à 8 à 9 % d'eau : ne les ramenez pas à 4
mix-mind-oily-rags = les chiffons gras d'huile de lin prennent feu d'eux-mêmes : étalez-les dehors, ou dans l'eau
mix-mind-bake-outdoors = étuvez dehors ou sous une hotte : un noyau mal cuit est gazeux dedans
mix-mind-silicate-lye = le silicate est une lessive caustique : gants et lunettes, et de l'eau à portée pour les yeux
mix-mind-carbon-dioxide = le gaz carbonique est plus lourd que l'air et ne se sent pas : ne gazez jamais dans une fosse ni une pièce close
mix-mind-silicate-out = tenez les noyaux au silicate cassés hors d'un tas à l'argile
mix-mind-calcium-bentonite = bentonite calcique, et non sodique
mix-mind-sugar-gas = le sucre dégage du gaz à la coulée : tirez de l'air, et coulez dehors
