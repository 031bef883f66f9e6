using PlatformForge.Masonry;
using PlatformForge.Masonry.Finishes;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Solids.Bodies.Walls;

/// <summary>The messages on facings: what a printer makes of them is known to the rooms after this one.</summary>
internal static class FacingFindings
{
    /// <param name="key">Key of the wall's thickness.</param>
    /// <param name="what">The wall.</param>
    /// <param name="thickness">Its thickness, mm.</param>
    /// <param name="depth">Depth of the joints, mm.</param>
    /// <param name="least">What has to stand behind them, mm.</param>
    /// <param name="joints">Key of that depth.</param>
    /// <param name="line">Width of a line of the nozzle, mm: deeper joints hang free, so that they are the fault and not the wall.</param>
    public static Finding WallTooThin(string key, string what, double thickness, double depth, double least, string joints, double line)
    {
        double shallow = Down(Math.Min(line, thickness - least));
        bool yields = depth > line + Tolerances.Rounding && shallow >= 0.1;
        string left = Invariant($"{Math.Max(0, thickness - depth):0.###} mm are left behind them, two lines of the nozzle are {least:0.###}.");
        string or = thickness > least ? Invariant($", or the joints {Down(thickness - least):0.###} mm deep (facing.depth)") : "";
        string thicker = Invariant($"ake the wall {Up(depth + least):0.###} mm thick");
        return Finding.Error(
            "PF5030",
            key,
            Invariant($"The {what} is {thickness:0.###} mm thick and its joints are {depth:0.###} mm deep: ") + left,
            yields ? Invariant($"Make the joints {shallow:0.##} mm deep (facing.depth), or m{thicker}.") : $"M{thicker}{or}.",
            FaultKind.DesignRule).Curing(yields ? Cure.Set(joints, shallow) : Cure.Set(key, Up(depth + least)));
    }

    public static Finding JointTooWide(string key, double joint, BrickModule module)
    {
        double widest = Down(Math.Min(module.Course, module.Header / 2) / 2);
        return Finding.Error(
            "PF5031",
            key + ".joint",
            Invariant($"Joints of {joint:0.###} mm leave nothing of a closer, which takes {module.Header / 2:0.###} mm with its joint, or of a course ")
                + Invariant($"of {module.Course:0.###} mm."),
            Invariant($"Give joints of {widest:0.###} mm or less."),
            FaultKind.DesignRule).Curing(widest);
    }

    public static Finding CoursesTooLow(string key, (string Key, double Layer) printer, (double Course, double LeastLayers) fit, double? layer) =>
        Finding.Error(
        "PF5032",
        key,
        Invariant($"A course of bricks is {fit.Course:0.###} mm high, {fit.Course / printer.Layer:0.#} layers of {printer.Layer:0.###} mm; ")
            + Invariant($"one that shows in print takes {fit.LeastLayers:0}."),
        (layer is { } thin ? Invariant($"Print in layers of {thin:0.##} mm, or l") : "L")
            + "eave the walls plain, or give them a rebate for brick paper (\"sheet\").",
        FaultKind.DesignRule).Curing(layer is { } fine ? Cure.Set(printer.Key + ".layer", fine) : Cure.LeaveOut(key));

    public static Finding BedCoursesOnly(string key, double nozzle, double header, double? finer) => Finding.Warning(
        "PF5033",
        key,
        Invariant($"A header is {Math.Max(0, header):0.###} mm long without its joint, less than two lines of a nozzle of {nozzle:0.##} mm: ")
            + "the perpends would fill up, so bed joints alone are laid.",
        finer is { } fine ? Invariant($"Print with a nozzle of {fine:0.##} mm for whole bricks, or draw the perpends with a scriber.")
            : "Draw the perpends with a scriber; no usual nozzle prints them.");

    public static Finding LayersNotWhole(string key, double course, double layer, double leastLayers)
    {
        double count = Math.Max(leastLayers, Math.Round(course / layer));
        return Finding.Note(
            "PF5034",
            key,
            Invariant($"A course is {course / layer:0.##} layers of {layer:0.###} mm: printed upright, some beds come out a layer higher than others."),
            Invariant($"Layers of {course / count:0.###} mm make {count:0} to a course."));
    }

    public static Finding CoursesDrawn(string key, string wall, DrawnCourses drawn) => Finding.Warning(
        "PF5067",
        key,
        Invariant($"The {wall} has {drawn.Count} whole courses of brick, drawn out by {100 * drawn.Draw:0} % ")
            + "to fill it, where a bricklayer would set it out anew.",
        Invariant($"At {drawn.Lower:0.##} mm it has {drawn.Count} courses at gauge, at {drawn.Higher:0.##} mm {drawn.Count + 1}.")).Curing(drawn.Nearest);

    /// <param name="key">Key of the facing.</param>
    /// <param name="depth">Depth of its joints, mm.</param>
    /// <param name="finish">The finish.</param>
    /// <param name="most">What its smallest piece takes along the wall, mm.</param>
    public static Finding JointDeeperThanPieces(string key, double depth, WallFinish finish, double most) => Finding.Error(
        "PF5065",
        key + ".depth",
        Invariant($"Joints {depth:0.###} mm deep lie deeper than the least piece of {FacingSpec.Name(finish)} is long, {most:0.###} mm: ")
            + "nothing would be left of it at a corner.",
        Invariant($"Make them {Down(most):0.##} mm deep or less."),
        FaultKind.DesignRule).Curing(Down(most));

    public static Finding JointTooDeep(string key, double depth, double line) => Finding.Warning(
        "PF5035",
        key + ".depth",
        Invariant($"Joints are {depth:0.###} mm deep: what stands out does so by more than a line of the nozzle, {line:0.##} mm, ")
            + "and its undersides hang free while they print.",
        Invariant($"Make them {Down(line):0.##} mm deep or less.")).Curing(Down(line));

    /// <param name="key">Key of the figure.</param>
    /// <param name="what">What it is of.</param>
    /// <param name="figure">The figure, mm.</param>
    /// <param name="least">The least that shows, mm.</param>
    public static Finding LostInPrint(string key, string what, double figure, double least) => Finding.Warning(
        "PF5070",
        key,
        Invariant($"{what} of {figure:0.###} mm shows in no print: slicers close so small a step, and a line's edge strays by as much."),
        Invariant($"Give {least:0.##} mm or more.")).Curing(least);

    /// <param name="key">Key of the figure.</param>
    /// <param name="what">What is too small.</param>
    /// <param name="figure">The figure, mm.</param>
    /// <param name="least">The least that is taken, mm.</param>
    /// <param name="print">The nozzle, the layer and the joint, mm.</param>
    public static Finding PieceTooSmall(string key, string what, double figure, double least,
        (double Nozzle, double Layer, double Joint) print) => Finding.Error(
        "PF5036",
        key,
        Invariant($"{what} would be lost in print: {figure:0.###} mm with a joint of {print.Joint:0.###}, ")
            + Invariant($"where two lines of a nozzle of {print.Nozzle:0.##} mm beside it, and four layers of {print.Layer:0.###}, want {least:0.###}."),
        Invariant($"Give {Up(least):0.##} mm or more, or print with a finer nozzle and thinner layers."),
        FaultKind.DesignRule).Curing(Up(least));

    /// <summary>Whether the most that a wall has room for, to a hundredth, is as much as the least that a printer shows, mm.</summary>
    public static bool HasRoom(double most, double least) => Down(most) >= least - Tolerances.Rounding;

    /// <param name="key">Key of the facing.</param>
    /// <param name="name">That of the figure.</param>
    /// <param name="what">What is too high.</param>
    /// <param name="sizes">The figure and the room under the coping, mm.</param>
    /// <param name="most">The most that has room, mm.</param>
    /// <param name="least">The least that a printer shows, mm.</param>
    public static Finding PieceTooHigh(string key, string name, string what, (double Figure, double Wall) sizes, double most, double least)
    {
        bool hasRoom = HasRoom(most, least);
        string wall = Invariant($"{what} do not fit on the wall: {name} is {sizes.Figure:0.###} mm, and between the ground and the coping ")
            + Invariant($"lie {Math.Max(0, sizes.Wall):0.###}; ");
        return Finding.Error(
            "PF5079",
            $"{key}.{name}",
            wall + (hasRoom ? Invariant($"{most:0.###} mm at most have whole ones there.") : Invariant($"the least that a printer shows is {least:0.###} mm.")),
            hasRoom ? Invariant($"Give {Down(most):0.##} mm or less.") : "Make the platform higher, or leave its walls plain.",
            FaultKind.DesignRule).Curing(hasRoom ? Cure.Set($"{key}.{name}", Down(most)) : Cure.LeaveOut(key));
    }

    /// <param name="key">Key of the facing.</param>
    /// <param name="name">That of the figure.</param>
    /// <param name="what">What is too long.</param>
    /// <param name="sizes">The figure and the wall's length, mm.</param>
    /// <param name="least">The least that a printer shows, mm.</param>
    public static Finding PieceTooLong(string key, string name, string what, (double Figure, double Wall) sizes, double least) => Finding.Error(
        "PF5081",
        $"{key}.{name}",
        Invariant($"{what} do not fit on the wall: {name} is {sizes.Figure:0.###} mm, and the wall is {sizes.Wall:0.###} mm long."),
        Invariant($"Give {Math.Max(Up(least), Down(sizes.Wall)):0.##} mm or less."),
        FaultKind.DesignRule).Curing(Math.Max(Up(least), Down(sizes.Wall)));

    public static Finding StonesOnEnd(string key, double length, double course) => Finding.Warning(
        "PF5080",
        key + ".stone_length",
        Invariant($"Stones {length:0.###} mm long in courses of {course:0.###} stand on end: squared stone lies on its bed (common practice, no source), ")
            + "and what is narrower than high reads as slivers.",
        Invariant($"Give {Up(course):0.##} mm or more; twice the course is usual.")).Curing(Up(course));

    public static Finding NoBack(string key) => Finding.Warning(
        "PF5037",
        key + ".back",
        "An island has no back: both its faces are faced as the front is, and facing.back says nothing.",
        "Leave it out.").Curing(Cure.LeaveOut(key + ".back"));

    public static Finding PavingTooSmall(string key, double figure, double least, double joint, double nozzle) => Finding.Error(
        "PF5038",
        key,
        Invariant($"Paving of {figure:0.###} mm leaves less than two lines of a nozzle of {nozzle:0.##} mm ")
            + Invariant($"beside a joint of {joint:0.###}, drawn in as it is."),
        Invariant($"Give {Up(least):0.##} mm or more, or narrower joints."),
        FaultKind.DesignRule).Curing(Up(least));

    public static Finding PavingTooWide(string key, double figure, double room) => Finding.Error(
        "PF5039",
        key,
        Invariant($"A piece of paving is {figure:0.###} mm across the platform, where {room:0.###} mm lie between coping and back at most."),
        Invariant($"Give {Down(room):0.##} mm or less, or lay the courses the other way (paving.courses)."),
        FaultKind.DesignRule).Curing(Down(room));

    public static Finding PavingTooDeep(string key, (double Thickness, double Least) deck, double depth, bool stated)
    {
        // Joints that nobody stated are as shallow as shows: it is the deck that is too thin then.
        double deepest = deck.Thickness - deck.Least, thick = Up(deck.Least + depth);
        string joints = key + ".paving.depth", what = depth < deck.Thickness ? Invariant($"leave {deck.Thickness - depth:0.###} mm of") : "go through";
        bool shallower = stated && deepest >= LeastPaving;
        return Finding.Error(
            "PF5040",
            stated ? joints : key + ".thickness",
            Invariant($"Joints of {depth:0.###} mm {what} a deck {deck.Thickness:0.###} mm thick; two lines of the nozzle are {deck.Least:0.###}."),
            shallower ? Invariant($"Give {Down(deepest):0.##} mm or less, or make the deck {thick:0.##} mm thick.")
                : Invariant($"Make the deck {thick:0.##} mm thick, or leave its paving out."),
            FaultKind.DesignRule).Curing(shallower ? Cure.Set(joints, Down(deepest)) : Cure.Set(key + ".thickness", thick));
    }

    public static Finding DeckTooThin(string key, double deck, double depth, double wall) => Finding.Error(
        "PF5049",
        key + ".thickness",
        Invariant($"Expansion joints {depth:0.###} mm deep leave {deck - depth:0.###} mm of a deck {deck:0.###} mm thick, less than two lines of the nozzle."),
        Invariant($"Make the deck {Up(depth + wall):0.##} mm thick, or leave expansion_joints out."),
        FaultKind.DesignRule).Curing(Cure.Set(key + ".thickness", Up(depth + wall)));

    // Shallowest joint that a key takes, mm.
    private const double LeastPaving = 0.05;

    private static double Up(double figure) => Math.Ceiling((figure - Tolerances.Rounding) * 100) / 100;

    private static double Down(double figure) => Math.Floor((figure + Tolerances.Rounding) * 100) / 100;
}

/// <summary>Courses of a wall that are drawn out.</summary>
/// <param name="Count">How many there are.</param>
/// <param name="Draw">By what share.</param>
/// <param name="Lower">The figure of the file, mm, at which as many are at gauge.</param>
/// <param name="Higher">That at which there is one more.</param>
/// <param name="Stated">That of the file.</param>
internal sealed record DrawnCourses(int Count, double Draw, double Lower, double Higher, double Stated)
{
    /// <summary>Whichever of both is nearer to the file's.</summary>
    public double Nearest => Stated - Lower < Higher - Stated ? Lower : Higher;
}
