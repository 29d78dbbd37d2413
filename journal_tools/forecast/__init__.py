"""What a yarn will do next time: one joint model of the steps of cloth, fitted to a whole journal.

kind and observed say what goes in, forecast answers, belief is the answer. Importing the package is
cheap; numpy and scipy.linalg come with forecast.
"""
