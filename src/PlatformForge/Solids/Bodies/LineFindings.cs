using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Solids.Bodies;

/// <summary>All messages about lines and strips that are cut into the deck, and about grooves of copings.</summary>
internal static class LineFindings
{
    public static Finding BankTooLarge(string key, int section, double slope, double? steeper) => Finding.Error(
        "PF5066",
        key + ".slope",
        Invariant($"The bank behind section {section}, a print of its own that falls 1 in {slope:0.###}, does not lie on the printer's bed."),
        steeper is { } most ? Invariant($"Give 1 in {most:0.#} or steeper, or shorter sections.") : "Give shorter sections, or a back of kind = \"wall\".",
        FaultKind.DesignRule).Curing(steeper is { } s ? Cure.Set(key + ".slope", s) : Cure.Text(key + ".kind", "wall"));

    public static Finding InTheWay(string key, LineBand line, IReadOnlyList<Opening> alike, Cure? cure)
    {
        var open = alike[0];
        var (at, near) = (open.Middle.Chainage, open.Middle.Reach - line.Near.At(open.Middle.Chainage));
        string more = alike.Count > 1 ? Invariant($"; {alike.Count} stand in its way") : "";
        return Finding.Error(
            "PF5041",
            key,
            Invariant($"The {line.Made.Name} runs over {open.Name}, at {at:F1} mm along the track and {near:F1} mm from the strip's near side{more}."),
            cure is null ? Invariant($"Move it, or the {line.Made.Name}.")
                : cure.Key == key + ".width" ? Invariant($"Give it a width of {cure.Value} mm, so that all go through it.")
                : Invariant($"Give an inset of {cure.Value} mm ({cure.Key})."),
            FaultKind.DesignRule).Curing(cure);
    }

    /// <param name="key">Key of its table.</param>
    /// <param name="made">What it comes to.</param>
    /// <param name="own">What is left of it as a print, mm; nought or less where nothing is.</param>
    /// <param name="nozzle">Of the printer, mm.</param>
    /// <param name="want">Two lines of the nozzle, and the width or thickness stated that leaves them, mm.</param>
    public static Finding TooNarrow(string key, LineMake made, double own, double nozzle, (double Lines, double Stated) want)
    {
        string across = made.Wall is null ? "width" : "thickness";
        string left = own > 0 ? Invariant($"The {made.Name} would be a print {own:0.###} mm wide") : $"Nothing would be left of the {made.Name} as a print";
        string beside = made.Wall is null ? "" : " behind its oversail and what is laid on it";
        string painted = made.Name == LineMake.White ? ", or have it painted (form = \"groove\")" : "";
        return Finding.Error(
            "PF5042",
            $"{key}.{across}",
            Invariant($"{left}{beside}, where two lines of a nozzle of {nozzle:0.##} mm want {want.Lines:0.##}."),
            Invariant($"Give a {across} of {Up(want.Stated):0.##} mm or more, or print with a finer nozzle{painted}."),
            FaultKind.DesignRule).Curing(Cure.Set($"{key}.{across}", Up(want.Stated)));
    }

    public static Finding TooThin(string key, LineMake made, double layer, double least) => Finding.Error(
        "PF5043",
        key + ".depth",
        Invariant($"The {made.Name} is {made.Depth:0.###} mm deep, {made.Depth / layer:0.##} layers of {layer:0.###}: ")
            + (made.Form == LineForm.Inlay ? "the deck's colour would show through." : "nothing of it would be printed."),
        Invariant($"Give a depth of {Up(least):0.##} mm or more."),
        FaultKind.DesignRule).Curing(Cure.Set(key + ".depth", Up(least)));

    public static Finding NotWhole(string key, LineMake made, double layer, double whole) => Finding.Warning(
        "PF5044",
        key + ".depth",
        Invariant($"The inlay is {made.Depth:0.###} mm deep, {made.Depth / layer:0.##} layers of {layer:0.###} mm: a slicer prints whole ones."),
        Invariant($"Give a depth of {whole:0.###} mm.")).Curing(Cure.Set(key + ".depth", Math.Round(whole, 4)));

    public static Finding StudTooSmall(string key, LineMake made, double nozzle, double least) => Finding.Error(
        "PF5045",
        key + ".stud",
        Invariant($"{(made.Pattern == StripPattern.Ribs ? "Ribs" : "Studs")} {made.Stud:0.###} mm wide are less than two lines of a nozzle of {nozzle:0.##} ")
            + "mm.",
        Invariant($"Give {Up(least):0.##} mm and a pitch of twice that, or pattern = \"plain\"."),
        FaultKind.DesignRule).Curing(Cure.Text(key + ".pattern", "plain"));

    public static Finding Raised(string key, LineMake made) => Finding.Note(
        "PF5046",
        key + (made.Wall is null && !made.IsPierced ? ".rise" : ".height"),
        Invariant($"The {made.Name} stands {made.Rise:0.###} mm over the deck. What stands over a deck cannot lie on the bed with it: it is printed ")
            + Invariant($"by itself, {(made.Wall is null ? "right way up" : "on its coping")}, and {(made.Wall is null ? "laid" : "stood")} into its rebate."),
        "Glue it in once the sections are joined and painted.");

    public static Finding CopingBricks(string key, double pitch, double joint, (double Nozzle, double Wall) print, double? narrow) => Finding.Error(
        "PF5047",
        key + ".kind",
        Invariant($"Bricks of the coping are {pitch:0.###} mm wide with a joint of {joint:0.###}: ")
            + Invariant($"what is left is less than two lines of a nozzle of {print.Nozzle:0.##} mm and would be lost."),
        (narrow is { } width ? Invariant($"Give joints of {Down(width):0.##} mm (joint_width), or ") : "Give ") + "kind = \"slabs\".",
        FaultKind.DesignRule).Curing(narrow is { } w ? Cure.Set(key + ".joint_width", Down(w)) : Cure.Text(key + ".kind", "slabs"));

    public static Finding NoFrontJoints(string key, double thickness, double least) => Finding.Note(
        "PF5071",
        key + ".thickness",
        Invariant($"A coping {thickness:0.##} mm thick has no room for its joints on the front: they end at its upper edge. ")
            + Invariant($"From {Up(least + 0.005):0.##} mm on they go down it."));

    public static Finding Margin(string key, double margin, (double Least, double Most) room) => Finding.Error(
        "PF5048",
        key + ".margin",
        room.Most < room.Least ? Invariant($"A tooled margin of {margin:0.###} mm leaves nothing of the slabs of this coping that a printer would show.")
            : Invariant($"A tooled margin of {margin:0.###} mm cannot be told from joint or middle: {Up(room.Least):0.##} to {Down(room.Most):0.##} mm can."),
        room.Most < room.Least ? "Leave it out, or make the slabs larger." : Invariant($"Give {Math.Clamp(margin, Up(room.Least), Down(room.Most)):0.##} mm."),
        FaultKind.DesignRule).Curing(room.Most < room.Least ? Cure.LeaveOut(key + ".margin")
            : Cure.Set(key + ".margin", Math.Clamp(margin, Up(room.Least), Down(room.Most))));

    /// <param name="key">Key of the white line.</param>
    /// <param name="line">The line.</param>
    /// <param name="margin">Width of the margins, mm.</param>
    /// <param name="clear">An inset at which they are clear of one another, mm; null where the coping has room for none.</param>
    public static Finding OverMargin(string key, WhiteLineSpec line, double margin, double? clear) => Finding.Warning(
        "PF5072",
        key + ".inset",
        Invariant($"The white line, {line.Inset:0.##} to {line.Inset + line.Width:0.##} mm behind the edge, takes away or touches ")
            + Invariant($"the line beside the tooled margin of {margin:0.##} mm."),
        clear is { } inset ? Invariant($"Give an inset of {Up(inset):0.##} mm, or have the line painted.") : "Have the line painted, or make it narrower.")
        .Curing(clear is { } free ? Cure.Set(key + ".inset", Up(free)) : Cure.Text(key + ".form", "paint"));

    private static double Down(double figure) => Math.Floor((figure + Tolerances.Rounding) * 100) / 100;

    private static double Up(double figure) => Math.Ceiling((figure - Tolerances.Rounding) * 100) / 100;
}
