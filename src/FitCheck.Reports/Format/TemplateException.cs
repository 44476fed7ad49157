namespace FitCheck.Reports.Format;

/// <summary>A template of a report is missing, unreadable or wrong. The message names the file and says what to do.</summary>
public sealed class TemplateException : Exception
{
    public TemplateException()
    {
    }

    public TemplateException(string message)
        : base(message)
    {
    }

    public TemplateException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
