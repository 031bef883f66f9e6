namespace PlatformForge.Exports.Pictures;

/// <summary>
/// Numbers over a whole sheet or picture, tens of megabytes of them, borrowed and given back. The framework's pool would keep one of the next power of two
/// for every thread that ever borrowed one; here no more wait than cores can use at once, each as long as it was asked for.
/// </summary>
/// <param name="most">How many may wait.</param>
internal sealed class LentFields(int most)
{
    private readonly List<float[]> waiting = [];

    /// <summary>Those of this process.</summary>
    public static LentFields Own { get; } = new(Environment.ProcessorCount);

    /// <summary>A field of at least so many numbers; what they are at first is anything.</summary>
    public float[] Rent(int least)
    {
        lock (waiting)
        {
            int found = waiting.FindIndex(f => f.Length >= least);
            if (found >= 0)
            {
                float[] field = waiting[found];
                waiting.RemoveAt(found);
                return field;
            }
        }

        return GC.AllocateUninitializedArray<float>(least);
    }

    /// <summary>Takes a field back that nobody looks at any more; of too many the shortest goes.</summary>
    public void GiveBack(float[] field)
    {
        lock (waiting)
        {
            waiting.Add(field);
            if (waiting.Count > most)
            {
                waiting.Remove(waiting.MinBy(f => f.Length)!);
            }
        }
    }

    /// <summary>Keeps none of them any longer: a run goes on to other work.</summary>
    public void LetGo()
    {
        lock (waiting)
        {
            waiting.Clear();
        }
    }
}
