package eaveside.demo;

import java.util.List;

/** Invented names; streets of the invented town. */
final class Names {
    static final List<String> FIRST = List.of(
            "Ada", "Barnaby", "Celia", "Dorian", "Esme", "Felix", "Greta", "Hollis", "Imogen", "Jasper", "Keziah",
            "Lorcan", "Mabel", "Nestor", "Ottilie", "Percy", "Queenie", "Rufus", "Saskia", "Tabitha", "Ulric", "Verity",
            "Wilf", "Xanthe", "Yorick", "Zelda", "Amos", "Beatrix", "Cyrus", "Della", "Edmund", "Freya", "Gideon",
            "Hattie", "Ivor", "Juniper", "Kit", "Leonie");

    static final List<String> LAST = List.of(
            "Applewhistle",
            "Brackenby",
            "Copperthwaite",
            "Dunnockson",
            "Emberley",
            "Fernsby-Lowe",
            "Gorseman",
            "Hawthornley",
            "Inkpenny",
            "Jarrowby",
            "Kestrelton",
            "Larkwhistle",
            "Mossbury",
            "Nettlefold-Ray",
            "Oakapple",
            "Plumtreeson",
            "Quillonby",
            "Rowanhurst",
            "Saltmarshe",
            "Thistlewood",
            "Underbough",
            "Vetchling",
            "Willowmere",
            "Yarrowby",
            "Ashgrovely",
            "Birchwaite",
            "Clovermoor",
            "Dandelby",
            "Elderwick",
            "Foxtarn",
            "Greenlingham",
            "Heronsby",
            "Ivybridgeson",
            "Juniperly",
            "Kingcupper",
            "Lindenby",
            "Marigoldson",
            "Nutmegger");

    static final List<String> BUSINESSES = List.of(
            "Brindlewick Bakery",
            "Tansyford Town Library",
            "Ottersby Animal Clinic",
            "Larchwick Apartments",
            "Grebe and Daughters Hardware",
            "Saltbrush Inn",
            "Mossgate Garden Center",
            "Wickett Lane School",
            "Hollyfern Dental Practice",
            "Quernstone Brewery",
            "Umberly Motors",
            "Thistledown Stretch Studio",
            "Penstemon Row Offices",
            "Copperjug Coffee",
            "Tansyford Swimming Hall",
            "Fennel and Rye Grocers",
            "Snowberry Hall",
            "Millrace Printworks");

    static final List<String> STREETS = List.of(
            "Tern Lane",
            "Mill Race Road",
            "Juniper Rise",
            "Old Quarry Road",
            "Plover Court",
            "Sagebrush Drive",
            "Weir Street",
            "Saddler's Row",
            "Bittern Way",
            "Upper Meadow Lane",
            "Kiln Street",
            "Orchard Bend");

    static final List<String> ACCESS = List.of(
            "Gate on the left side; ring first.",
            "Park in the drive, not on the street.",
            "Key with the neighbor at the blue door.",
            "Side door is open on weekdays; tap behind the shed.",
            "Call ten minutes ahead; there is a barrier at the entrance.",
            "Use the service yard behind the building before nine.",
            "");

    static final List<String> HAZARDS = List.of(
            "Dog in the yard.",
            "Power line over the drive: keep poles clear.",
            "Steep bank below the south side.",
            "Loose paving by the back door.",
            "Wasps under the eaves in warm months.",
            "Glass awning over the entrance: no ladder against it.",
            "",
            "",
            "");

    private Names() {}
}
