using PlatformForge.Clearance;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Gaps;

/// <summary>The upper part of the gap plot: reach, budget, edge and platform.</summary>
internal sealed class ReachPlot(PlatformDossier platform, PlotFrame frame)
{
    // mm between two edges that nobody can tell apart on the plot
    private const double Alike = 0.03;

    private static readonly Rgb BudgetColour = new(0xC4, 0xCA, 0xCE), DoubtColour = new(0xE3, 0xB2, 0x5B);

    private readonly PlatformPlan plan = platform.Plan;
    private readonly VehicleLooks looks = new(platform);
    private readonly RequirementTrace need = platform.Plan.Requirement;

    // What vehicles reach on the stated line; what a survey leaves uncertain lies beyond, as a band of its own.
    private double Reached(int station) => need.Swept[station] - (Doubt?.Amount[station] ?? 0);

    private AllowanceCost? Doubt => need.Allowances?.Costs.FirstOrDefault(c => c.Name == ClearanceBudget.SurveyResidual
        && platform.Budget.Lines.Any(l => l.Name == c.Name && l.Placing == BudgetPlacing.Swept));

    public void DrawOn(Sheet sheet, double ratio)
    {
        var labels = new Labels(sheet);
        frame.Grid(sheet);
        Governing(sheet, labels);
        Platform(sheet);
        Survey(sheet, labels);
        Budget(sheet, labels);
        Lines(sheet);
        Names(labels);
        frame.Axes(sheet, ratio, "from the track's middle");
    }

    private void Governing(Sheet sheet, Labels labels)
    {
        foreach (var (from, to) in Runs())
        {
            int vehicle = need.GoverningVehicle[from];
            if (vehicle < 0)
            {
                continue;
            }

            var (colour, pattern) = looks[vehicle];
            var ring = Enumerable.Range(from, to - from + 1).Select(i => frame.Of(need.Stations[i], Reached(i)))
                .Append(frame.Of(need.Stations[to], frame.LeastY)).Append(frame.Of(need.Stations[from], frame.LeastY)).ToArray();
            sheet.Area(ring, new(colour, 0.2));
            sheet.Area(ring, new(colour, 0.75, pattern));
            string words = Invariant($"{need.Called(vehicle)}: {need.GoverningPart[from]}");
            double x = frame.X((need.Stations[from] + need.Stations[to]) / 2), y = frame.Bottom - 4.5, length = TextStyle.Length(words, HouseStyle.Strong);
            if (length + 4 < frame.X(need.Stations[to]) - frame.X(need.Stations[from]))
            {
                sheet.Box(x - (length / 2) - 1.4, y - 2.8, length + 2.8, 4, new(HouseStyle.Paper, 0.92));
                labels.Put(words, HouseStyle.Strong with { Colour = VehicleLooks.ForWords(colour) }, (new Point2(x, y), TextAnchor.Middle, 0));
            }
        }
    }

    /// <summary>Stretches of stations with the same vehicle and part governing.</summary>
    private IEnumerable<(int From, int To)> Runs()
    {
        int last = need.Stations.Length - 1;
        for (int from = 0; from < last;)
        {
            int to = from + 1;
            while (to < last && need.GoverningVehicle[to] == need.GoverningVehicle[from] && need.GoverningPart[to] == need.GoverningPart[from])
            {
                to++;
            }

            yield return (from, to);
            from = to;
        }
    }

    private void Platform(Sheet sheet)
    {
        var edge = plan.First.CopingFront.Stations.Select((s, i) => frame.Of(s, plan.First.CopingFront.Reach[i]))
            .Append(new(frame.Right, frame.Top)).Append(new(frame.Left, frame.Top));
        sheet.Area(edge, new(HouseStyle.Deck));
        foreach (var (foot, head) in new[] { (plan.Profile.From, plan.Profile.StartHead), (plan.Profile.EndHead, plan.Profile.To) })
        {
            if (head - foot > 0)
            {
                double top = frame.Top + 6.5;
                sheet.Line(new(frame.X(foot) + 1, top), new(frame.X(head) - 1, top), HouseStyle.Thin);
                sheet.Text("ramp", new(frame.X((foot + head) / 2), top - 1), HouseStyle.Small, TextAnchor.Middle);
            }
        }

        sheet.Text("platform", new(frame.X((plan.Profile.StartHead + plan.Profile.EndHead) / 2), frame.Top + 6.5), HouseStyle.Subheading, TextAnchor.Middle);
    }

    private void Survey(Sheet sheet, Labels labels)
    {
        if (Doubt is not { } doubt)
        {
            return;
        }

        sheet.Area(need.Stations.Select((s, i) => frame.Of(s, need.Swept[i])).Concat(need.Stations.Select((s, i) => frame.Of(s, Reached(i))).Reverse()),
            new(DoubtColour, 0.55), HouseStyle.Hairline);
        string words = Invariant($"{doubt.Name} {Figures.Fine(doubt.Amount.Min())} to {Figures.Fine(doubt.Amount.Max())}");
        labels.Put(words, HouseStyle.Small with { Colour = HouseStyle.Ink }, InBand(words, Reached, i => need.Swept[i]));
    }

    private void Budget(Sheet sheet, Labels labels)
    {
        double low = 0;
        var added = platform.Budget.Lines.Where(l => l.Placing != BudgetPlacing.Swept).ToArray();
        double stretch = platform.Budget.Sum > 0 ? platform.Budget.Margin / platform.Budget.Sum : 1;
        for (int k = 0; k < added.Length; k++)
        {
            double from = low, high = low + (added[k].AmountMm * stretch);
            var upper = need.Stations.Select((s, i) => frame.Of(s, need.Swept[i] + high));
            var lower = need.Stations.Select((s, i) => frame.Of(s, need.Swept[i] + from)).Reverse();
            sheet.Area(upper.Concat(lower), new(BudgetColour, k % 2 == 0 ? 0.85 : 0.5), HouseStyle.Hairline);
            string words = Invariant($"{added[k].Name} {Figures.Fine(added[k].AmountMm)}");
            labels.Put(words, HouseStyle.Small with { Colour = HouseStyle.Ink }, InBand(words, i => need.Swept[i] + from, i => need.Swept[i] + high));

            low = high;
        }
    }

    // Places for words within a band between two reaches by station, from the right: where the band takes them whole, though it rises and falls.
    private IEnumerable<(Point2 At, TextAnchor Anchor, double Angle)> InBand(string words, Func<int, double> from, Func<int, double> high)
    {
        const double Step = 4, Rise = 0.74, Room = 0.15;
        double size = HouseStyle.Small.Size, length = TextStyle.Length(words, HouseStyle.Small);
        for (double right = frame.Right - 3; right - length > frame.Left + 2; right -= Step)
        {
            double upper = double.NegativeInfinity, lower = double.PositiveInfinity;
            foreach (int i in Enumerable.Range(0, need.Stations.Length)
                .Where(i => frame.X(need.Stations[i]) > right - length - 1.5 && frame.X(need.Stations[i]) < right + 1.5))
            {
                (upper, lower) = (Math.Max(upper, frame.Y(high(i))), Math.Min(lower, frame.Y(from(i))));
            }

            if (lower - upper > (Rise * size) + (2 * Room))
            {
                yield return (new(right, ((upper + lower) / 2) + (Rise * size / 2)), TextAnchor.End, 0);
            }
        }
    }

    private void Lines(Sheet sheet)
    {
        for (int vehicle = 0; vehicle < need.Vehicles.Count; vehicle++)
        {
            var own = OwnReach(vehicle);
            if (own.Length > 0)
            {
                sheet.Lines(own, new(0.22, looks[vehicle].Colour));
            }
        }

        sheet.Lines(need.Stations.Select((s, i) => frame.Of(s, Reached(i))), HouseStyle.Outline);
        foreach (var style in Enum.GetValues<EdgeStyle>().Where(s => s != plan.Spec.Face.Edge && (int)s < plan.Alternatives.Count))
        {
            var line = plan.Alternatives[(int)style];
            sheet.Lines(line.Stations.Select((s, i) => frame.Of(s, line.Reach[i])),
                new(0.2, HouseStyle.Ink, style == EdgeStyle.Faired ? [3, 1.2] : [0.6, 1.2]));
        }

        sheet.Lines(plan.First.CopingFront.Stations.Select((s, i) => frame.Of(s, plan.First.CopingFront.Reach[i])), new(0.9, HouseStyle.Ink));
    }

    /// <summary>Farthest reach of one vehicle over all its parts, on the faced track.</summary>
    private Point2[] OwnReach(int vehicle)
    {
        var parts = platform.Envelope.Parts.Where(p => p.IsFaced && need.IndexOf(p) == vehicle).ToArray();
        if (parts.Length == 0)
        {
            return [];
        }

        return [.. Enumerable.Range(0, platform.Envelope.Count)
            .Select(i => (S: platform.Envelope.From + (i * platform.Envelope.Spacing), T: parts.Max(p => p.Towards(plan.Side)[i])))
            .Where(p => p.S >= frame.LeastX && p.S <= frame.MostX && p.T > frame.LeastY)
            .Select(p => frame.Of(p.S, p.T))];
    }

    private void Names(Labels labels)
    {
        double span = frame.MostX - frame.LeastX;
        var others = Enum.GetValues<EdgeStyle>().Where(e => e != plan.Spec.Face.Edge && (int)e < plan.Alternatives.Count).ToArray();
        var alike = others.Where(e => Enumerable.Range(0, plan.First.Stations.Length)
            .All(i => Math.Abs(plan.Alternatives[(int)e].Reach[i] - plan.First.CopingFront.Reach[i]) < Alike)).ToArray();
        string same = alike.Length == 0 ? "" : Invariant($"; the same if {string.Join(" or ", alike.Select(Word))}");
        Name(labels, Invariant($"coping edge, {Word(plan.Spec.Face.Edge)}{same}"), HouseStyle.Strong, plan.First.CopingFront, frame.LeastX + (0.45 * span));
        foreach (var style in others.Except(alike))
        {
            // Where it stands farthest from the chosen edge there is room for its name.
            var line = plan.Alternatives[(int)style];
            int most = Enumerable.Range(0, line.Stations.Length).MaxBy(i => Math.Abs(line.Reach[i] - plan.First.CopingFront.Reach[i]));
            double at = Math.Clamp(line.Stations[most], frame.LeastX + (0.06 * span), frame.MostX - (0.06 * span));
            Name(labels, Invariant($"if {Word(style)}"), HouseStyle.Small with { Colour = HouseStyle.Ink }, line, at);
        }
    }

    private static string Word(EdgeStyle style) => style.ToString().ToLowerInvariant();

    /// <summary>Names a line on the platform's side of it, near a chainage.</summary>
    private void Name(Labels labels, string name, TextStyle style, PlanLine line, double near)
    {
        double span = frame.MostX - frame.LeastX;
        var places = from up in (double[])[2.2, 5, 8]
                     from along in (double[])[0, 0.06, -0.06, 0.12, -0.12]
                     let s = Math.Clamp(near + (along * span), frame.LeastX, frame.MostX)
                     let half = (frame.MostX - frame.LeastX) * TextStyle.Length(name, style) / frame.Width / 2
                     let top = Math.Max(line.At(s - half), line.At(s + half))
                     select (frame.Of(s, Math.Max(top, line.At(s))) + new Point2(0, -up), TextAnchor.Middle, 0.0);
        labels.PutOver(name, style, new(HouseStyle.Deck), places);
    }
}
