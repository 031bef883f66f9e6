namespace PlatformForge.Track.Surveys.Fitting.Lines;

/// <summary>
/// How far the shape of a line may be off where nobody measured its place and direction, as with versines: a platform is put
/// beside the track as it lies, so that only what is left counts after the stated line has been moved and turned to the true one.
/// </summary>
/// <param name="chainages">Chainages, mm, rising.</param>
/// <param name="drawn">Lines drawn from what the readings leave open: movement in mm at every chainage.</param>
/// <param name="unseen">What lies between the readings unseen, mm.</param>
internal sealed class LooseShape(double[] chainages, double[][] drawn, double unseen)
{
    // The same part of the drawn lines that the band of a placed line holds.
    private const double Held = 0.98;

    // A straight line through fewer places than this says nothing of the shape.
    private const int Fewest = 4;

    /// <summary>The bound on the shape between two chainages, mm, that holds at the stated rate.</summary>
    public double Likely(double from, double to)
    {
        var (first, last) = Window(from, to);
        double[] most = [.. drawn.Select(line => Settled(line, first, last).Max(Math.Abs)).Order()];
        double reading = most[(int)(Held * most.Length)];
        return Math.Sqrt((reading * reading) + (unseen * unseen));
    }

    private (int First, int Last) Window(double from, double to)
    {
        int first = Math.Min(Math.Max(0, Array.FindLastIndex(chainages, s => s <= from)), chainages.Length - Fewest);
        int last = Array.FindIndex(chainages, s => s >= to);
        return (first, Math.Max(first + Fewest, last < 0 ? chainages.Length : last + 1));
    }

    // What is left when the line is moved and turned to fit best (least squares).
    private double[] Settled(double[] moves, int first, int last)
    {
        int n = last - first;
        double middle = 0, mean = 0;
        for (int k = first; k < last; k++)
        {
            middle += chainages[k] / n;
            mean += moves[k] / n;
        }

        double along = 0, square = 0;
        for (int k = first; k < last; k++)
        {
            double s = chainages[k] - middle;
            along += s * moves[k];
            square += s * s;
        }

        double turn = along / square;
        return [.. Enumerable.Range(first, n).Select(k => moves[k] - mean - (turn * (chainages[k] - middle)))];
    }
}
