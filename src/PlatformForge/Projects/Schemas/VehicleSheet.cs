using System.Text;
using PlatformForge.Projects.Keys;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Units;

namespace PlatformForge.Projects.Schemas;

/// <summary>
/// The form for a vehicle of one's own: a file with a line for every figure, each with what it is and where to put the calliper. A
/// project names the file as a preset, and it can be tried against a finished platform.
/// </summary>
public static class VehicleSheet
{
    private const int Column = 26;

    /// <summary>What is filled in; all other lines are comments until they are wanted.</summary>
    private static readonly (string Key, string Value)[] Filled =
    [
        ("name", "\"my coach\""),
        ("length", "228"),
        ("pivots", "162"),
        ("width", "34"),
        ("bogie_wheelbase", "32"),
        ("low", "4"),
        ("high", "50"),
        ("sill.height", "13"),
    ];

    /// <summary>Where to put the calliper, by key.</summary>
    private static readonly (string Key, string Where)[] Where =
    [
        ("length", "Calliper over the ends of the body at its widest level; buffers and gangways are parts."),
        ("pivots", "From the front axle of one bogie to the front axle of the other. Without bogies: first to last axle that guides."),
        ("width", "Jaws level, across the widest place: door handles, grab rails, window ledges."),
        ("bogie_wheelbase", "Axle end to axle end of one bogie, first to last; 0 without bogies."),
        ("trailing_bogie_wheelbase", "The same on the rear bogie, when the two differ."),
        ("ahead", "From each pivot to its end of the body; half of what the front is longer."),
        ("low", "Depth rod from a card laid over both rails up to the underside of the body."),
        ("high", "Depth rod from the card to the roof's top."),
        ("least_radius", "From the maker's leaflet, or the tightest curve it was seen to run."),
        ("middle_axle_play", "Push the middle wheelset over to one side, then to the other: half of the way between."),
        ("taper.length", "From the very end to where the sides are parallel."),
        ("taper.width", "Across the very end."),
        ("leading_truck.at", "From midway between the coupled end axles forward to the truck's axle, or to midway between its two."),
        ("leading_truck.pivot", "To the screw or pin it turns on, from the same place; a radial axlebox turns about the middle of its guides' curve."),
        ("trailing_truck.at", "The same, backward; negative."),
        ("sill.height", "Depth rod from the card to the top of the floor or footboard at the door."),
        ("sill.width", "Across both footboards, when they are not flush with the body."),
        ("part.from", "Depth rod along the vehicle, from midway between the pivots to the rear of the part; behind is negative."),
        ("part.to", "The same to its front."),
        ("part.width", "Across both sides of it: over cylinder covers, over step treads, over axleboxes."),
        ("part.low", "From the card to its underside."),
        ("part.high", "From the card to its top."),
        ("body.gap", "Feeler or calliper between the two bodies, the set standing on straight track."),
        ("body.pivots", "Axle to the same axle of the next bogie; a body that shares both its bogies needs none."),
        ("body.gangway.width", "Across the bellows."),
    ];

    /// <summary>The file's text.</summary>
    public static string Write()
    {
        var text = new StringBuilder("""
            # A vehicle of your own. Measure the model itself: makers widen and shorten things, cylinders and steps above all.
            # You need a calliper with a depth rod, a strip of card to lay over both rails, and straight track.
            # Plain numbers are mm of the model; a text such as "57 ft full size" is divided by the layout's scale. Rail top is height 0.
            # Distances along the vehicle run forward from midway between the pivots; behind is negative.
            # Use it in a project:            [[vehicle]]
            #                                 preset = "my-coach.toml"
            # or try it on what is built:     platformforge verify FOLDER --with-vehicle my-coach.toml

            """.ReplaceLineEndings("\n"));
        Lines(text, VehicleKeys.Table.Rules.Where(r => r.Name != "preset"), "");
        foreach (var rule in VehicleKeys.Table.Rules.Where(IsTable))
        {
            Table(text, rule, "", rule.Name);
        }

        return text.ToString();
    }

    private static void Table(StringBuilder text, KeyRule rule, string home, string path)
    {
        var (keys, list) = rule is ListRule { Item: TableRule item } ? (item.Keys, true) : (((TableRule)rule).Keys, false);
        bool live = Filled.Any(f => f.Key.StartsWith(path + ".", StringComparison.Ordinal));
        text.Append("\n# ").Append(rule.Says).Append('\n').Append(live ? "" : "# ").Append(list ? $"[[{home}{rule.Name}]]" : $"[{home}{rule.Name}]")
            .Append('\n');
        Lines(text, keys, path + ".");
        foreach (var inner in keys.Where(IsTable))
        {
            Table(text, inner, home + rule.Name + ".", path + "." + inner.Name);
        }
    }

    private static void Lines(StringBuilder text, IEnumerable<KeyRule> rules, string home)
    {
        foreach (var rule in rules.Where(r => !IsTable(r)))
        {
            string path = home + rule.Name;
            string? filled = Filled.FirstOrDefault(f => f.Key == path).Value, where = Where.FirstOrDefault(w => w.Key == path).Where;
            string value = filled ?? rule.Default ?? StartingFile.Example("vehicle." + path)
                ?? throw new BrokenInvariantException($"Projects: the vehicle's form has no example for {path}.");
            string statement = $"{(filled is null ? "# " : "")}{rule.Name} = {value}";
            string choices = rule is TextRule { Choices.Count: > 1 } choice ? $" One of: {string.Join(", ", choice.Choices)}." : "";
            text.Append(statement.PadRight(Column)).Append(" # ").Append(rule.Says).Append(choices).Append('\n');
            if (where is not null)
            {
                text.Append(' ', Column).Append(" #   measure: ").Append(where).Append('\n');
            }
        }
    }

    private static bool IsTable(KeyRule rule) => rule is TableRule or ListRule { Item: TableRule };
}
