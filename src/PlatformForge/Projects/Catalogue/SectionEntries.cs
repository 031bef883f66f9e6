namespace PlatformForge.Projects.Catalogue;

/// <summary>PF5 and PF6: solids, cuts, joints, the printer.</summary>
internal static class SectionEntries
{
    public static readonly FindingEntry[] All =
    [
        new("PF5030", "The joints of a faced wall leave less than two lines of the nozzle behind them.",
            "Make the wall thicker or the joints shallower, as the message says."),
        new("PF5031", "The joints of brickwork leave nothing of its smallest bricks or of its courses.", "Give narrower joints."),
        new("PF5032", "Courses of brickwork are lower than four layers and would not show in print.", "Print in thinner layers, or leave the walls plain."),
        new("PF5033", "Headers of brickwork are shorter than two lines of the nozzle: bed joints alone are laid.",
            "Print with a finer nozzle, or draw the perpends.", Reasons.Caller),
        new("PF5034", "Courses of brickwork on a piece that is printed upright are not whole layers.",
            "Print in layers of which the message tells how thick.", Reasons.Note),
        new("PF5035", "Joints of a faced wall are deeper than a line of the nozzle: undersides of what stands out hang free.",
            "Make them as deep as the message says, or print with a wider nozzle."),
        new("PF5036", "Stones, planks, posts or panels of a faced wall are smaller than a printer shows.",
            "Give the figure that the message names, or print finer."),
        new("PF5037", "The back of an island is to be faced, which has none.", "Leave facing.back out."),
        new("PF5038", "Pieces of paving are smaller than two lines of the nozzle beside their joints.",
            "Give the figure that the message names, or narrower joints."),
        new("PF5039", "A piece of paving is wider than the deck.", "Give a smaller piece, or lay the courses the other way."),
        new("PF5040", "Joints of paving leave too little of the deck.", "Make them shallower or the deck thicker."),
        new("PF5041", "Something is let into the deck where a line or strip lies.", "Move one of them."),
        new("PF5042", "A line or strip that is a print of its own is narrower than two lines of the nozzle.", "Give a greater width, or have it painted."),
        new("PF5043", "An inlay is less than two layers deep, or a strip less than one.", "Give a greater depth."),
        new("PF5044", "An inlay's depth is not whole layers.", "Give a depth that is."),
        new("PF5045", "Studs or ribs of a strip are narrower than two lines of the nozzle.", "Give wider ones, or a plain strip."),
        new("PF5046", "A strip stands over the deck and is printed by itself, right way up.", "Glue it into its rebate.", Reasons.Note),
        new("PF5047", "Bricks of a coping are narrower than two lines of the nozzle beside their joints.", "Give narrower joints, or slabs."),
        new("PF5048", "A tooled margin of a coping cannot be told from joints and middle.", "Give a width that leaves a line on either side."),
        new("PF5049", "Expansion joints leave too little of the deck.", "Make the deck thicker, or leave them out."),
        new("PF5050", "Piers are lost in the lines of the nozzle.", "Give the figure that the message names."),
        new("PF5051", "Piers of masonry in a wall of timber, panels or sheet.", "Face the wall with masonry, or leave the piers out."),
        new("PF6001", "A piece does not fit on the bed.", "Cut shorter, narrow the platform, or use a larger bed."),
        new("PF6050", "A figure of joints or sections lies outside what its key takes.", "Give a number in the range that the message names.", Reasons.Caller),
        new("PF6002", "A piece is higher than the printer takes.", "Lower the platform, print it in another pose, or use a higher printer."),
        new("PF6003", "Sections are to be shorter than the places for cuts allow.", "Allow the length that the message names."),
        new("PF6004", "Something is thinner than two lines of the nozzle.", "Make it thicker, or print with a finer nozzle."),
        new(
            "PF6005",
            "A dowel leaves too little material round its bore.",
            "Give the diameter or the fit that the message names, or no dowels.",
            OneThing: "The diameter is at fault where no usual fit would do, the fit where one would."),
        new("PF6006", "A section is too crowded underneath to be engraved.", "Use a shorter name or fewer ribs.", Reasons.Several),
        new(
            "PF6007",
            "Part of a section has nothing under it while it prints.",
            "Cut it at the ramp's head, with the cuts that the message names, or let the slicer put supports there.",
            Reasons.Several,
            "Small or large, it is the same overhang."),
        new("PF6008", "A section is long and narrow and may warp.", "Print it with a brim.", "The brim is set in the slicer."),
        new(
            "PF6009",
            "A section holds part of a ramp and of the level deck, and does not lie flat.",
            "Cut it at the ramp's head, with the cuts that the message names.",
            Reasons.Note),
        new("PF6011", "A section is too short for its joints.", "Allow longer sections, move a forced cut, or make the dowels shorter."),
        new(
            "PF6012",
            "Letters of a platform's name have no drawing to be engraved by.",
            "Give a name in plain letters, if it is to be read underneath.",
            Reasons.Note),
        new("PF6020", "A deck with crossfall on a curve leaves the coping's height or the fall asked.", "Allow shorter sections or give less fall."),
        new(
            "PF6021",
            "A hole or socket is narrower than two lines of the nozzle and closes while it prints.",
            "Make it wider, print with a finer nozzle, or drill it."),
        new("PF6022", "A plate leaves too little material round its pocket.", "Give the size that the message names."),
        new(
            "PF6040",
            "A platform is so wide for its bed that its sections are shorter than wide.",
            "Make it narrower, or use a larger bed, as the message says.",
            Reasons.Several),
    ];
}
