namespace PlatformForge.Masonry.Finishes;

/// <summary>Nothing but a wall's openings: the wall alone where it has none.</summary>
/// <param name="wall">The wall laid flat.</param>
/// <param name="least">What is left of an opening that is lower is none, mm.</param>
internal sealed class SmoothPattern(FlatWall wall, double least) : IWallPattern
{
    public double GreatestDraw => 0;

    public IEnumerable<WallRegion> Regions()
    {
        if (wall.Openings.Count == 0)
        {
            yield break;
        }

        EdgeLine top = new(wall.Top, -OpeningCut.Ledge), foot = new(wall.Foot, OpeningCut.Ledge);
        var bends = new CourseCut(wall.Bends, least);
        var cuts = new List<OpeningCut>();
        foreach (var (at, shape) in wall.Openings)
        {
            double left = bends.Clear(at - (shape.Width / 2), -1), right = bends.Clear(at + (shape.Width / 2), 1);
            if (Lies(shape, (left, right), top, foot) is { } cut && !cuts.Exists(c => c.Meets(cut)))
            {
                cuts.Add(cut);
                foreach (var region in cut.Regions(0, x => bends.Clear(x, x < at ? -1 : 1)))
                {
                    yield return region;
                }
            }
        }
    }

    // Where it has room in its run; one under a level head yields to the part of the wall that it lies in, as a wall that leans has them.
    private OpeningCut? Lies(OpeningShape shape, (double Left, double Right) sides, EdgeLine top, EdgeLine foot)
    {
        double sill = Math.Max(shape.Sill, foot.Range(sides.Left, sides.Right).High), most = top.Range(sides.Left, sides.Right).Low;
        double crown = shape.Sill + shape.Height;
        if (shape.Rise <= 0 && crown > most)
        {
            (sill, crown) = (Math.Max(foot.Range(sides.Left, sides.Right).High, most - shape.Height), most);
        }

        var run = wall.Runs.FirstOrDefault(r => r.From + OpeningCut.Ledge < sides.Left && r.To - OpeningCut.Ledge > sides.Right);
        return run.To <= run.From || crown > most || crown - shape.Rise - sill < least ? null : new(shape, OpeningCut.Ledge, sides, sill, crown - shape.Rise);
    }
}
