using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;

namespace PlatformForge.Platforms.Surfaces;

/// <summary>
/// Finds hinged planes over the level part of a platform with crossfall. Free are the height and the fall of the first line and how each plane
/// rises along; from these everything else follows line by line: a plane is told by its first line and its rise, and it tells the
/// next line. So every height is an affine form of the free figures, and the planes hinge whatever these are.
/// </summary>
internal static class HingeProgram
{
    public static HeightPlane[] Solve(PlatformPlan plan, HingeLine[] lines)
    {
        double asked = plan.Spec.Deck.Width / plan.Spec.Deck.Crossfall;
        int free = lines.Length + 1;
        var panels = Panels(plan, lines, free);
        var rows = new List<Form>();
        foreach (var (panel, i) in panels.Select((p, i) => (p, i)))
        {
            rows.Add(((panel.Fall * lines[i].Length) - asked) * (1 / HingedDeck.FallAllowance));
            foreach (double s in plan.Stations.Where(s => s >= lines[i].Chainage && s <= lines[i + 1].Chainage))
            {
                rows.Add((panel.HeightAt(plan.ToLayout(s, plan.CopingFront.At(s))) - plan.Profile.Level) * (1 / HingedDeck.CopingAllowance));
            }
        }

        rows.Add(((panels[^1].FallAlong(lines[^1].Away) * lines[^1].Length) - asked) * (1 / HingedDeck.FallAllowance));
        double[] found = LeastGreatest.Solve([.. rows.Select(r => r.Terms)], free);
        return [.. panels.Select(p => p.Plane(found))];
    }

    private static Panel[] Panels(PlatformPlan plan, HingeLine[] lines, int free)
    {
        var height = Form.Free(free, 0, 1) + plan.Profile.Level;
        var fall = Form.Free(free, 1, 1 / plan.Spec.Deck.Width) + (1 / plan.Spec.Deck.Crossfall);
        var panels = new Panel[lines.Length - 1];
        for (int i = 0; i < panels.Length; i++)
        {
            var chord = lines[i + 1].Front - lines[i].Front;
            var rise = Form.Free(free, 2 + i, 1 / chord.Length);
            panels[i] = new(lines[i], chord * (1 / chord.Length), height, fall, rise);
            (height, fall) = (height + (rise * chord.Length), panels[i].FallAlong(lines[i + 1].Away));
        }

        return panels;
    }

    // A plane by the height and fall of its first line and its rise along the chord of the coping's front, all per free figure.
    private sealed record Panel(HingeLine Line, Point2 Chord, Form Height, Form Fall, Form Rise)
    {
        private double Twist => Point2.Cross(Line.Away, Chord);

        public Form HeightAt(Point2 p) => Height + Change(p - Line.Front);

        public Form FallAlong(Point2 away) => Change(away) * -1;

        public HeightPlane Plane(double[] found)
        {
            double h = Height.At(found), x = Change(new(1, 0)).At(found), y = Change(new(0, 1)).At(found);
            return new(h - (x * Line.Front.X) - (y * Line.Front.Y), x, y);
        }

        // Any displacement is so much along the line, down its fall, and so much along the chord, up its rise.
        private Form Change(Point2 by) => (Fall * (-Point2.Cross(by, Chord) / Twist)) + (Rise * (Point2.Cross(Line.Away, by) / Twist));
    }

    /// <summary>An affine form: a factor for every free figure, then the constant.</summary>
    private readonly record struct Form(double[] Terms)
    {
        public static Form Free(int count, int which, double factor)
        {
            var terms = new double[count + 1];
            terms[which] = factor;
            return new(terms);
        }

        public static Form operator +(Form a, Form b) => new([.. a.Terms.Zip(b.Terms, (x, y) => x + y)]);

        public static Form operator +(Form a, double constant) => new([.. a.Terms[..^1], a.Terms[^1] + constant]);

        public static Form operator -(Form a, double constant) => a + -constant;

        public static Form operator *(Form a, double factor) => new(Array.ConvertAll(a.Terms, x => x * factor));

        public double At(double[] free) => Terms[^1] + free.Zip(Terms, (x, y) => x * y).Sum();
    }
}
