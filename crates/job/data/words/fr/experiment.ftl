# French, from memory: not yet read by a native founder.

# Experiments on a heap: plans, results, pictures and batch cards.

## The plan

experiment-plan-head = { $name } : { $batches } gâchées de { $mass }, { $different } mélanges différents
experiment-basis-dry = les quantités comptent chaque part à sec, et toute l'eau comme eau ; les grammes sont ceux de la matière telle quelle
experiment-basis-lies = quantités et grammes comptent chaque part telle quelle
experiment-order = faites-les dans cet ordre, tiré au sort (graine { $seed })
experiment-mixes-made = chaque mélange est fait { $times } fois : { $names }
experiment-mixes-days = chaque jour comprend chaque mélange, l'effet du jour est donc retiré
experiment-mixes-shows = deux mélanges se distinguent s'ils diffèrent de plus de { $times } fois le bruit d'une gâchée
experiment-second-session = à partir de la gâchée { $batch }, une seconde séance, avec { $names } : faites-la quand la première est mesurée
experiment-repeats = répétitions, qui montrent le bruit : { $list }
experiment-repeats-one = { $batch } de { $of }
experiment-repeats-none = rien n'est répété : le bruit ne se distinguera pas des différences ; demandez au moins deux répétitions
experiment-teaches-plane = elles apprennent ce que fait chacun à lui seul : { $names }
experiment-teaches-twisted = elles apprennent ce que fait chacun à lui seul et deux à deux : { $names }
experiment-teaches-bent = elles apprennent ce que fait chacun, deux à deux, et où se trouve le mieux entre les bouts : { $names }
experiment-spare = { $terms } nombres sont appris ; { $spare } gâchées de reste montrent s'ils sont sûrs
experiment-spare-none = aucune gâchée de reste : rien ne montrera si les résultats sont sûrs ; faites plus de gâchées, ou shape = "plane"
experiment-efficiency = elles apprennent { $share } % de ce que donnerait le meilleur plan d'autant de gâchées, sans répétition imposée
experiment-shows = { $name } se voit s'il change le résultat de plus de { $times } fois le bruit d'une gâchée
experiment-hidden = { $term } n'est pas appris : s'il agit, il passe pour { $terms }
experiment-unattainable = { $name } ne peut atteindre { $bound } % à cause des plages des autres : { $reachable } % est sa limite
experiment-coarse = { $name } descend à { $mass }, que votre balance peut manquer de { $share } % : pesez-le sur une balance plus fine, ou faites de plus grosses gâchées
experiment-dust = le sable et l'argile secs font une poussière qui abîme les poumons pour toujours : humidifiez, portez un masque, mélangez dehors
experiment-batch = gâchée
experiment-day = jour
experiment-mix = mélange

## What the results say

experiment-read-head = { $name } : { $measured } gâchées mesurées sur { $batches }
experiment-open = reste à mesurer : gâchée { $list }
experiment-response = { $name } : { $count } gâchées, de { $low } à { $high }
experiment-response-none = { $name } : pas encore de résultats
experiment-unread-none = entrez-les avec : oddside experiment enter
experiment-unread-alike = tous les résultats sont égaux, on n'en apprend rien : mesurez plus finement
experiment-unread-never = { $name } valait { $value } dans chaque gâchée mesurée, on ne peut rien en dire : mesurez des gâchées avec une autre valeur
experiment-unread-few = { $batches } gâchées de { $different } mélanges différents ne peuvent apprendre { $terms } nombres : mesurez-en plus
experiment-unread-together = { $term } n'a bougé qu'avec le reste, on ne peut les distinguer : mesurez des gâchées où ils diffèrent
experiment-noise-repeats = bruit d'une gâchée, par les répétitions : { $noise } ({ $low } à { $high }, 19 fois sur 20)
experiment-noise-unrepeated = aucune répétition mesurée : le bruit n'est connu que par ce que la forme laisse
experiment-noise-left = la forme laisse { $noise }, avec { $spare } gâchées de reste
experiment-foretold = elle explique { $share } % des différences, et aurait prédit { $foretold } % de celles de gâchées qu'on lui cachait
experiment-foretold-badly = elle explique { $share } % des différences, et ne prédit pas mieux que la moyenne une gâchée qu'on lui cachait
experiment-lack-none = la forme ne manque pas plus que le bruit (hasard { $chance } %)
experiment-lack = la forme manque plus que le bruit (hasard { $chance } %) : des résultats dans la plage s'en écartent
experiment-lack-unjudged = on ne sait si la forme est juste : il faudrait des répétitions et des mélanges de reste
experiment-effect = { $name }, du moins au plus essayé : { $change } ± { $within }
experiment-effect-unsure = { $name }, du moins au plus essayé : { $change }
experiment-day-apart = jour { $day } contre le premier : { $change } ± { $within }, retiré
experiment-odd = la gâchée { $batch } a donné { $measured } là où les autres prédisent { $foretold } : revoyez-la, ou refaites-la
experiment-winner = vainqueur : { $mix }, { $value } ({ $low } à { $high })
experiment-as-good = { $share } % de la plage connue ne s'en distingue pas
experiment-leading = en tête : { $mix }, { $value }
experiment-unnamed-chance = aucun vainqueur : le hasard seul sépare autant les mélanges { $chance } fois sur 100, et 5 est la limite
experiment-unnamed-spare = aucun vainqueur : aucune gâchée de reste, le bruit ne se distingue pas des différences
experiment-unnamed-shape = aucun vainqueur : la forme est fausse, son sommet n'est pas fiable ; faites les gâchées suivantes
experiment-unnamed-step = aucun vainqueur : le bruit est plus petit que le pas de l'instrument ; lisez plus finement
experiment-unnamed-range = une plage est voulue : pas de vainqueur pour elle seule
experiment-unnamed-unknown = aucun vainqueur : aucun mélange n'est assez connu
experiment-mix-noise = bruit d'une gâchée : { $noise }, avec { $spare } gâchées de reste
experiment-mix-mean = { $mix } : { $value } ± { $within }, { $count } gâchées
experiment-mix-lead = { $leading } contre { $other } : { $by } ± { $within }
experiment-mix-winner = vainqueur : { $mix }, { $value } ± { $within }
experiment-mix-unnamed = aucun vainqueur, car le hasard seul écarte autant { $mix } de { $others } { $chance } fois sur 100, et 5 est la limite
experiment-mix-unmeasured = aucun vainqueur, car { $mix } n'a pas encore de résultat
experiment-mix-unrepeated = aucun vainqueur, car trop peu de répétitions sont mesurées pour distinguer le bruit des différences
experiment-mix-alike = aucun vainqueur, car chaque répétition a donné la même lecture : lisez plus finement, ou écrivez le pas de l'instrument
experiment-mix-days-hide = aucun vainqueur, car mélanges et jours ont changé ensemble : mesurez un des mélanges les autres jours aussi
experiment-mix-next-measure = mesurez d'abord les gâchées qui restent
experiment-mix-next-nothing = il ne manque rien pour nommer le meilleur
experiment-mix-next-again = à refaire : { $mixes }
experiment-mix-next-in-all = jusqu'à { $times } fois chacun en tout ; cela montre l'avance si elle est aussi grande qu'elle paraît
experiment-mix-next-small = l'avance est si petite que 50 gâchées de chacun ne la montreraient pas : prenez le mélange le moins cher
experiment-mix-next-how = ajoutez-les au plan avec : oddside experiment plan --more { $count }
experiment-joined = tous les souhaits ensemble
experiment-joined-mix = le mieux pour tous : { $mix } ({ $share } % de tous les souhaits remplis)
experiment-joined-none = aucun mélange connu ne remplit tous les souhaits : l'un d'eux est partout sans valeur
experiment-joined-results = worthless et good de { $names } viennent des résultats ; écrivez les vôtres
experiment-wish = souhait rempli
experiment-expected = attendu
experiment-next = que faire ensuite
experiment-next-better = le plus prometteur : { $mix } ; attendu { $expected }, gain { $gain }
experiment-next-expected = { $name } { $value } ± { $deviation }
experiment-next-teaches = apprend le plus : { $mix }
experiment-next-few = laquelle promet le plus se dit à partir de trois gâchées mesurées
experiment-next-how = ajoutez-les au plan avec : oddside experiment plan --more 3

## Pictures

experiment-chart-across = en travers : { $across }, { $low } à { $high } ; vers le haut : { $up }, { $from } à { $to } ; 0 vaut { $least }, 9 vaut { $most } ; un point : inconnu
experiment-picture = { $name } : lignes d'égal résultat ; les croix sont des gâchées faites ; la part hachurée est inconnue
experiment-picture-held = tenu : { $held }

## Batch cards

experiment-card-title = Fiches de gâchées
experiment-card-batch = Gâchée { $number }
experiment-card-day = jour { $day }
experiment-card-holds = contient { $water } d'eau
experiment-card-made = pesé
experiment-card-notes = Notes
experiment-card-mask = La poussière abîme les poumons pour toujours : masque, sable humide, dehors.
experiment-card-in-order = Faites les gâchées dans l'ordre des numéros. Notez ce que vous voyez, aussi ce qui n'était pas prévu.

## Mixes together, masses as weighed, pictures of one thing

experiment-mix-met = { $mix } : { $share } % de tous les souhaits remplis
experiment-mix-met-unsure = ces parts réunissent des moyennes et ignorent le bruit : un mélange n'est meilleur que là où il est nommé ci-dessus
experiment-mix-picture = croix : gâchées ; ronds : moyennes et leur écart possible, 19 fois sur 20 ; plein : montré le meilleur
experiment-picture-along = croix : gâchées ; la bande : écart possible de la ligne, 19 fois sur 20
experiment-weighed = { $count } gâchées sont prises comme pesées
experiment-weighed-mixes = { $count } gâchées ont été pesées autrement que ne dit leur mélange ; elles comptent pour lui quand même
experiment-next-believed = le meilleur d'après toutes les gâchées, fait ou non : { $mix } ; attendu { $value } ± { $deviation }
